/** Wood left between two voids: upright where they overlap in plan, else across the wall between them. */
import { boxesApart, nearestOnRegion, regionsApart } from '../apart.ts';
import type { Point } from '../axes.ts';
import { banded } from '../banded.ts';
import type { Banded } from '../banded.ts';
import { bounds, regionArea } from '../measure.ts';
import { intersection } from '../offset.ts';
import { footprint } from './footprint.ts';
import type { Pocket, Span, Tube, Void } from './solid.ts';
import { pocketSpan } from './solid.ts';
import type { Left } from './wood-left.ts';

/** Not looked at where two boxes are further apart than this, mm: no wall is ever in question there. */
export const FAR_MM = 40;

/** Least wood between two voids; undefined where they are far apart. */
export function leftBetween(a: Void, b: Void): Left | undefined {
  const other = footprint(b);
  const gaps = footprint(a).flatMap((ring) => other.map((one) => boxesApart(ring, one)));
  if (Math.min(...gaps) > FAR_MM) return undefined;
  if (a.kind === 'pocket') return b.kind === 'pocket' ? betweenPockets(a, b) : betweenTubeAnd(a, b);
  if (b.kind === 'pocket') return betweenTubeAnd(b, a);
  return alongTube(a, (x, y, z) => {
    const away = awayFromAxis(b, x, y, z);
    return { mm: away.mm - b.radiusMm, up: away.up };
  });
}

function betweenTubeAnd(pocket: Pocket, tube: Tube): Left {
  const { contains } = banded(pocket.region);
  const boxes = pocket.region.map((ring) => bounds(ring)!);
  // Within a box it may be the pocket itself: that goes below nothing.
  const leastMm = (x: number, y: number): number => {
    const gaps = boxes.map((box) => Math.hypot(beyond(x, box.minX, box.maxX), beyond(y, box.minY, box.maxY)));
    return gaps.includes(0) ? -Infinity : Math.min(...gaps);
  };
  return alongTube(tube, (x, y, z) => awayFromPocket(pocket, contains, x, y, z), leastMm);
}

/** How far a number lies outside of two. */
const beyond = (x: number, min: number, max: number): number => Math.max(0, min - x, x - max);

function betweenPockets(a: Pocket, b: Pocket): Left {
  const shared = intersection(a.region, b.region);
  const sharedMm2 = Math.abs(regionArea(shared));
  if (sharedMm2 > TOUCHING_MM2) {
    // Floors are planes: the least lies at a corner.
    let best: Left | undefined;
    for (const ring of shared) {
      for (let i = 0; i < ring.length; i += 2) {
        const [xMm, yMm] = [ring[i]!, ring[i + 1]!];
        const mm = spansApart(pocketSpan(a, yMm), pocketSpan(b, yMm));
        if (best === undefined || mm < best.mm) best = { mm, xMm, yMm, through: 'floor', sharedMm2, up: 1 };
      }
    }
    return best!;
  }
  const up = (p: Point, q: Point) => Math.max(0, spansApart(pocketSpan(a, p.y), pocketSpan(b, q.y)));
  const { distanceMm, a: at, b: other } = regionsApart(a.region, b.region, up);
  const upright = distanceMm === 0 ? 0 : up(at, other) / distanceMm;
  const [xMm, yMm] = [(at.x + other.x) / 2, (at.y + other.y) / 2];
  return { mm: distanceMm, xMm, yMm, through: 'wall', sharedMm2: 0, up: upright };
}

/** Edges that only touch share an area of rounding. */
const TOUCHING_MM2 = 1e-3;

/** mm of wood between two spans, below zero by how far they overlap. */
const spansApart = (a: Span, b: Span): number => Math.max(b.low - a.high, a.low - b.high);

/** Steps along a tube, mm, and how near to the place of the least it goes. */
const STEP_MM = 0.25;
const FINE_MM = 0.0005;
/** For rounding. */
const HAIR_MM = 1e-6;

/**
 * The least along the axis, less the radius; round ends, so at the ends it may say up to a radius too little. `leastMm`: no
 * more than what is away from (x, y) at any height, and quicker to know.
 */
function alongTube(
  { from, to, radiusMm }: Tube,
  away: (x: number, y: number, z: number) => Away,
  leastMm: (x: number, y: number) => number = () => -Infinity,
): Left {
  const lengthMm = Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm, to.zMm - from.zMm);
  const placeAt = (t: number): readonly [x: number, y: number] => [
    from.xMm + t * (to.xMm - from.xMm),
    from.yMm + t * (to.yMm - from.yMm),
  ];
  const at = (t: number) => {
    const [xMm, yMm] = placeAt(t);
    const { mm, up } = away(xMm, yMm, from.zMm + t * (to.zMm - from.zMm));
    return { t, xMm, yMm, mm: mm - radiusMm, up };
  };
  const steps = Math.max(1, Math.ceil(lengthMm / STEP_MM));
  let best = at(0);
  const lower = (t: number): boolean => {
    const onTube = Math.min(1, Math.max(0, t));
    if (leastMm(...placeAt(onTube)) - radiusMm > best.mm + HAIR_MM) return false;
    const next = at(onTube);
    if (next.mm >= best.mm) return false;
    best = next;
    return true;
  };
  for (let i = 1; i <= steps; i++) lower(i / steps);
  for (let step = 0.5 / steps; step * lengthMm > FINE_MM;) {
    if (!lower(best.t - step) && !lower(best.t + step)) step /= 2;
  }
  const { mm, xMm, yMm, up } = best;
  return { mm, xMm, yMm, through: 'wall', sharedMm2: 0, up };
}

/** How far away, and how upright the way is. */
interface Away {
  readonly mm: number;
  readonly up: number;
}

function away(across: number, up: number): Away {
  const mm = Math.hypot(across, up);
  return { mm, up: mm === 0 ? 0 : up / mm };
}

/** From a point to the nearest of a pocket; below zero inside it, by how far it is from leaving upright. */
function awayFromPocket(pocket: Pocket, contains: Banded['contains'], x: number, y: number, z: number): Away {
  const upAt = (at: number): number => {
    const { low, high } = pocketSpan(pocket, at);
    return Math.max(low - z, z - high);
  };
  if (contains(x, y)) return { mm: upAt(y), up: 1 };
  const { distanceMm, point } = nearestOnRegion(pocket.region, x, y);
  return away(distanceMm, Math.max(0, upAt(point.y)));
}

function awayFromAxis({ from, to }: Tube, x: number, y: number, z: number): Away {
  const [dx, dy, dz] = [to.xMm - from.xMm, to.yMm - from.yMm, to.zMm - from.zMm];
  const [px, py, pz] = [x - from.xMm, y - from.yMm, z - from.zMm];
  const squared = dx * dx + dy * dy + dz * dz;
  const t = squared === 0 ? 0 : Math.min(1, Math.max(0, (px * dx + py * dy + pz * dz) / squared));
  return away(Math.hypot(px - t * dx, py - t * dy), Math.abs(pz - t * dz));
}
