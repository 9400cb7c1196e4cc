/** The tightest inside bend of an outline: what decides which blade or cutter can follow it. */
import type { Point } from './axes.ts';
import { flatten } from './flatten.ts';
import { signedArea } from './measure.ts';
import { derivativesAt, pointAt, type Path, type Segment, type Subpath } from './segment.ts';

/** A place on an outline and the radius of the bend there, mm; zero at an inside corner. */
export interface Bend {
  readonly radiusMm: number;
  readonly at: Point;
}

/** Tangents that differ by less than this at a join count as smooth: a hundredth of a radian turns no blade. */
const SMOOTH_RAD = 0.01;
const SAMPLES = 256;

/**
 * Least radius at which the first subpath, a closed one, bends inwards, zero at an inside corner, undefined where it is convex.
 * Curvature |B′ × B″| / |B′|³ of the true curve, taken at 257 points of each segment: exact for circular arcs, and for
 * a Bézier as good as the sampling (within 1 % for the smooth curves of an outline).
 */
export function leastConcaveBend(path: Path): Bend | undefined {
  const [subpath] = path;
  const [polygon] = flatten(path.slice(0, 1));
  if (subpath === undefined || polygon === undefined) return undefined;
  const inwards = signedArea(polygon) > 0 ? -1 : 1;
  const bends = [...cornerBends(subpath, inwards), ...curveBends(subpath, inwards)];
  return bends.reduce<Bend | undefined>(
    (least, bend) => (least === undefined || bend.radiusMm < least.radiusMm ? bend : least),
    undefined,
  );
}

function curveBends(subpath: Subpath, inwards: number): Bend[] {
  const bends: Bend[] = [];
  for (const segment of subpath.segments) {
    for (let i = 0; i <= SAMPLES; i++) {
      const t = i / SAMPLES;
      const { first, second } = derivativesAt(segment, t);
      const turning = inwards * cross(first, second);
      // A straight stretch gives no bend; rounding there must not give a huge one.
      if (turning > 1e-9 * Math.hypot(first.x, first.y) * Math.hypot(second.x, second.y)) {
        bends.push({ radiusMm: Math.hypot(first.x, first.y) ** 3 / turning, at: pointAt(segment, t) });
      }
    }
  }
  return bends;
}

function cornerBends(subpath: Subpath, inwards: number): Bend[] {
  const drawn = subpath.segments.filter(({ from, to, kind }) => kind === 'arc' || from.x !== to.x || from.y !== to.y);
  return drawn.flatMap((segment, i) => {
    const before = leaving(drawn[(i + drawn.length - 1) % drawn.length]!, 1);
    const after = leaving(segment, 0);
    const turnRad = Math.atan2(inwards * cross(before, after), before.x * after.x + before.y * after.y);
    return turnRad > SMOOTH_RAD ? [{ radiusMm: 0, at: segment.from }] : [];
  });
}

/** Direction of travel at an end; where a control point lies on the end itself, the direction a little inside. */
function leaving(segment: Segment, t: 0 | 1): Point {
  const { first } = derivativesAt(segment, t);
  if (Math.hypot(first.x, first.y) > 1e-9) return first;
  return derivativesAt(segment, t === 0 ? 1e-6 : 1 - 1e-6).first;
}

function cross(a: Point, b: Point): number {
  return a.x * b.y - a.y * b.x;
}
