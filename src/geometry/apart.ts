/** How far two polygons that do not overlap are apart. */
import type { Point } from './axes.ts';
import { bounds } from './measure.ts';
import { nearestOnEdge } from './nearness.ts';
import type { Polygon } from './polygon.ts';
import { forEachEdge } from './polygon.ts';

export interface Apart {
  readonly distanceMm: number;
  /** The two points nearest to each other. */
  readonly a: Point;
  readonly b: Point;
}

/** Exact for polygons whose edges do not cross: the nearest pair has a corner of one of them. */
export function polygonsApart(a: Polygon, b: Polygon): Apart {
  const from = cornersTo(a, b);
  const to = cornersTo(b, a);
  return from.distanceMm <= to.distanceMm ? from : { distanceMm: to.distanceMm, a: to.b, b: to.a };
}

function cornersTo(a: Polygon, b: Polygon): Apart {
  let best: Apart | undefined;
  forEachEdge(a, (x, y) => {
    const { distanceMm, point } = nearestOnEdge(b, x, y);
    if (best === undefined || distanceMm < best.distanceMm) best = { distanceMm, a: { x, y }, b: point };
  });
  return best!;
}

/** No nearer than this: the gap between their boxes, mm; 0 where the boxes overlap. */
export function boxesApart(a: Polygon, b: Polygon): number {
  const [p, q] = [bounds(a)!, bounds(b)!];
  return Math.hypot(Math.max(0, q.minX - p.maxX, p.minX - q.maxX), Math.max(0, q.minY - p.maxY, p.minY - q.maxY));
}
