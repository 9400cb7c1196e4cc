/** The bays of a plain line that a saw line passes by, and the deepest point of each. */
import type { Point } from './axes.ts';
import { evenOffset } from './even-offset.ts';
import { bounds } from './measure.ts';
import { difference } from './offset.ts';
import { forEachEdge, type Polygon } from './polygon.ts';
import { edgeLine } from './solid/edge-line.ts';

/** A bay that leaves less than this is none, mm: common practice, no source. */
export const LEAST_LEFT_MM = 0.2;
/** Where the saw line comes this near to the plain one, one bay ends, mm. */
const PARTED_MM = LEAST_LEFT_MM / 2;
/** Points of a bay no shallower than the deepest by more than this are as deep, mm. */
const AS_DEEP_MM = 0.001;
/** A bay narrower than this is a crack, mm. */
const CRACK_MM = 0.02;
/** A pocket is looked into this much further, mm: to the end of its bay, where the sides meet at 6 degrees or more. */
const ABOUT_MM = 0.2;

export interface Bay {
  /** On the plain line; in a flat bottom its middle, from which the saw line may be nearer by up to 0.2 mm. */
  readonly deepest: Point;
  /** The largest distance from a point of the bay to the saw line before it, mm. */
  readonly leftMm: number;
  /** The plain line as a polygon that starts at the deepest point. */
  readonly round: Polygon;
}

/** In no particular order. `line` is the closing of `plain` by the blade's radius, both counter-clockwise. */
export function baysOf(plain: Polygon, line: Polygon, bladeRadiusMm: number): Bay[] {
  const points = sampled(plain, bladeRadiusMm);
  const isSawn = sawnAt(plain, line);
  const start = points.findIndex(isSawn);
  // From one end of a bay round to the same point again, so that every bay is in one piece.
  const round = [...points.slice(start), ...points.slice(0, start)];
  const ends = [...round.flatMap((point, i) => (isSawn(point) ? [i] : [])), round.length];
  return ends.slice(1).flatMap((end, i) => bayBetween(round, ends[i]!, end, line));
}

/**
 * Corners of the plain line, and points between them so close that none steps over a touch between two bays: where the
 * blade touches a straight side, it is half of PARTED_MM away at half a step from the touch (sagitta step²/8R).
 */
function sampled(plain: Polygon, bladeRadiusMm: number): Point[] {
  const stepMm = Math.sqrt(4 * bladeRadiusMm * PARTED_MM);
  const points: Point[] = [];
  forEachEdge(plain, (x0, y0, x1, y1) => {
    const steps = Math.ceil(Math.hypot(x1 - x0, y1 - y0) / stepMm);
    for (let i = 0; i < steps; i++) points.push({ x: x0 + (i / steps) * (x1 - x0), y: y0 + (i / steps) * (y1 - y0) });
  });
  return points;
}

/**
 * Does the saw line pass at a point of the plain one? The distance is measured only about the pockets between both,
 * elsewhere they are one: the plain line is let grow first, so that arcs drawn differently leave no hairs to look into.
 */
function sawnAt(plain: Polygon, line: Polygon): (point: Point) => boolean {
  const sawn = edgeLine(line, true);
  const pockets = difference([line], evenOffset([plain], CRACK_MM / 2)).map((ring) => bounds(ring)!);
  const isNear = ({ x, y }: Point): boolean =>
    pockets.some(
      ({ minX, minY, maxX, maxY }) =>
        x > minX - ABOUT_MM && y > minY - ABOUT_MM && x < maxX + ABOUT_MM && y < maxY + ABOUT_MM,
    );
  return (point) => !isNear(point) || sawn.at(point.x, point.y) < PARTED_MM;
}

/** The bay after one point and before another where the saw line passes; none where it is too shallow. */
function bayBetween(round: readonly Point[], first: number, end: number, line: Polygon): Bay[] {
  if (end - first < 2) return [];
  // Only the saw line before the bay counts, not what passes behind a thin horn.
  const before = edgeLine(stretch(line, round[first]!, round[end % round.length]!), false);
  const left = round.slice(first, end).map(({ x, y }) => before.at(x, y));
  const leftMm = Math.max(...left);
  if (leftMm < LEAST_LEFT_MM) return [];
  return [{ leftMm, ...startingAt(round, first + deepestPlace(left, leftMm, (i) => round[first + i]!)) }];
}

/**
 * The number of the deepest point: half way between two where the bottom is as good as flat between them, as in a smooth
 * bay drawn alike on both sides. Of two deepest places apart, the one nearer to the neck, +y, or on the side of +x.
 */
function deepestPlace(left: readonly number[], leftMm: number, pointAt: (i: number) => Point): number {
  const isDeep = (mm: number): boolean => mm >= leftMm - AS_DEEP_MM;
  const [low, high] = [left.findIndex(isDeep), left.findLastIndex(isDeep)];
  if (left.slice(low, high).every((mm) => mm >= leftMm - LEAST_LEFT_MM)) return (low + high) / 2;
  const [a, b] = [pointAt(low), pointAt(high)];
  const isFirst = Math.abs(a.y - b.y) > AS_DEEP_MM ? a.y > b.y : a.x > b.x;
  return isFirst ? low : high;
}

/** The points of the line from where it is nearest to one point, counter-clockwise to where it is to another. */
function stretch(line: Polygon, from: Point, to: Point): Polygon {
  const [start, end] = [nearestEdge(line, from), nearestEdge(line, to)];
  const count = line.length / 2;
  const edges = ((end - start + count) % count) + 1;
  return Float64Array.from({ length: 2 * (edges + 1) }, (_, i) => line[(2 * start + i) % line.length]!);
}

function nearestEdge(line: Polygon, { x, y }: Point): number {
  let [nearest, least] = [0, Infinity];
  forEachEdge(line, (x0, y0, x1, y1, index) => {
    const [dx, dy] = [x1 - x0, y1 - y0];
    const t = Math.min(1, Math.max(0, ((x - x0) * dx + (y - y0) * dy) / (dx * dx + dy * dy)));
    const away = Math.hypot(x0 + t * dx - x, y0 + t * dy - y);
    if (away < least) [nearest, least] = [index, away];
  });
  return nearest;
}

/** The polygon turned to start at a point, given by its number, or half way to the next one. */
function startingAt(round: readonly Point[], place: number): { deepest: Point; round: Polygon } {
  const [before, after] = [round[Math.floor(place)]!, round[Math.ceil(place)]!];
  const deepest = { x: (before.x + after.x) / 2, y: (before.y + after.y) / 2 };
  const next = Math.floor(place) + 1;
  const others = [...round.slice(next), ...round.slice(0, Math.ceil(place))];
  return { deepest, round: Float64Array.from([deepest, ...others].flatMap(({ x, y }) => [x, y])) };
}
