/** The convex hull of a polygon, and where a ray from inside leaves it. */
import type { Point } from './axes.ts';
import { forEachEdge, type Polygon } from './polygon.ts';

/** Counter-clockwise, without points on straight stretches (Andrew's monotone chain). */
export function convexHull(polygon: Polygon): Polygon {
  const points: Point[] = [];
  forEachEdge(polygon, (x, y) => points.push({ x, y }));
  points.sort((a, b) => a.x - b.x || a.y - b.y);
  return Float64Array.from([...chain(points), ...chain(points.toReversed())].flatMap(({ x, y }) => [x, y]));
}

/** The lower side of points sorted from left to right, or the upper from right to left; without its last point. */
function chain(points: readonly Point[]): Point[] {
  const kept: Point[] = [];
  for (const point of points) {
    while (kept.length >= 2 && cross(kept.at(-2)!, kept.at(-1)!, point) <= 0) kept.pop();
    kept.push(point);
  }
  return kept.slice(0, -1);
}

/** Where a ray from a point in a convex counter-clockwise polygon, along a unit vector, leaves it. */
export function leaves(hull: Polygon, from: Point, way: Point): Point {
  let least = Infinity;
  forEachEdge(hull, (x0, y0, x1, y1) => {
    const [nx, ny] = [y1 - y0, x0 - x1];
    const towards = nx * way.x + ny * way.y;
    if (towards > 0) least = Math.min(least, (nx * (x0 - from.x) + ny * (y0 - from.y)) / towards);
  });
  return { x: from.x + least * way.x, y: from.y + least * way.y };
}

function cross(a: Point, b: Point, c: Point): number {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}
