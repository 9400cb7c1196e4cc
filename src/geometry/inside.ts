/** How much room one region has inside another, all round. */
import type { Point } from './axes.ts';
import { nearestOnRegion, regionsApart } from './apart.ts';
import { banded } from './banded.ts';
import { bounds, regionArea } from './measure.ts';
import { intersection, offset } from './offset.ts';
import type { Region } from './polygon.ts';
import { forEachEdge } from './polygon.ts';

export interface Room {
  /** Below zero: how far the inner one reaches out. */
  readonly mm: number;
  /** Where that is, on the outer one’s edge. */
  readonly at: Point;
}

/** Less than this outside is the rounding of a drawing, mm. */
const ROUNDING_MM = 0.001;

/**
 * Least distance between the edges of two regions of which the first is to lie inside the second; where it does not, how far
 * it reaches out: the furthest of its corners outside, or of the other's corners inside it. Both regions have a ring.
 */
export function roomInside(inner: Region, outer: Region): Room {
  const [within, around] = [banded(inner), banded(outer)];
  const out = [
    ...cornersOf(inner)
      .filter(({ x, y }) => !around.contains(x, y))
      .map((corner) => nearestTo(outer, corner)),
    ...cornersOf(outer)
      .filter(({ x, y }) => within.contains(x, y))
      .map((corner) => ({ mm: nearestTo(inner, corner).mm, at: corner })),
  ];
  const furthest = out.reduce<Room>((far, one) => (one.mm > far.mm ? one : far), { mm: 0, at: { x: 0, y: 0 } });
  if (furthest.mm > ROUNDING_MM) return { mm: -furthest.mm, at: furthest.at };
  const { distanceMm, b } = regionsApart(inner, outer);
  return { mm: distanceMm, at: b };
}

function nearestTo(region: Region, { x, y }: Point): Room {
  const { distanceMm, point } = nearestOnRegion(region, x, y);
  return { mm: distanceMm, at: point };
}

function cornersOf(region: Region): readonly Point[] {
  const corners: Point[] = [];
  for (const ring of region) forEachEdge(ring, (x, y) => corners.push({ x, y }));
  return corners;
}

/** Distance of two regions; below zero where they overlap: how wide what they share is, by the largest circle in it. */
export function clearBetween(a: Region, b: Region): Room {
  const shared = intersection(a, b);
  if (Math.abs(regionArea(shared)) <= ROUNDING_MM) {
    const { distanceMm, a: at } = regionsApart(a, b);
    return { mm: distanceMm, at };
  }
  const { minX, maxX, minY, maxY } = bounds(shared[0]!)!;
  return { mm: -2 * inRadius(shared), at: { x: (minX + maxX) / 2, y: (minY + maxY) / 2 } };
}

/** Radius of the largest circle inside a region: drawn in by more than that, nothing is left of it. */
function inRadius(region: Region): number {
  let [least, most] = [0, Math.sqrt(Math.abs(regionArea(region)) / Math.PI) + ROUNDING_MM];
  while (most - least > ROUNDING_MM) {
    const middle = (least + most) / 2;
    if (offset(region, -middle).length > 0) least = middle;
    else most = middle;
  }
  return (least + most) / 2;
}
