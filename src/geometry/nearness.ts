/** A point against a polygon: inside or not, how far from the edge, how far to the furthest corner. */
import type { Point } from './axes.ts';
import { forEachEdge, type Polygon, type Region } from './polygon.ts';

export interface Near {
  readonly point: Point;
  readonly distanceMm: number;
}

/** True inside the polygon (even-odd). On the very edge it may say either: ask `nearestOnEdge` how close that is. */
export function contains(polygon: Polygon, x: number, y: number): boolean {
  let inside = false;
  forEachEdge(polygon, (x0, y0, x1, y1) => {
    if (y0 > y !== y1 > y && x < x0 + ((y - y0) * (x1 - x0)) / (y1 - y0)) inside = !inside;
  });
  return inside;
}

/** True inside the region: in an outer ring and in none of its holes. */
export function regionContains(region: Region, x: number, y: number): boolean {
  return region.filter((ring) => contains(ring, x, y)).length % 2 === 1;
}

/** The point of the edge nearest to (x, y), and the distance in mm, never negative. Throws for a polygon without points. */
export function nearestOnEdge(polygon: Polygon, x: number, y: number): Near {
  let [bestX, bestY, best] = [NaN, NaN, Infinity];
  forEachEdge(polygon, (x0, y0, x1, y1) => {
    const [dx, dy] = [x1 - x0, y1 - y0];
    const squared = dx * dx + dy * dy;
    const t = squared === 0 ? 0 : Math.min(1, Math.max(0, ((x - x0) * dx + (y - y0) * dy) / squared));
    const [px, py] = [x0 + t * dx, y0 + t * dy];
    const away = (px - x) ** 2 + (py - y) ** 2;
    if (away < best) [bestX, bestY, best] = [px, py, away];
  });
  if (best === Infinity) throw new RangeError('a polygon without points has no edge');
  return { point: { x: bestX, y: bestY }, distanceMm: Math.sqrt(best) };
}

/** mm from (x, y) to the edge, never negative. Throws for a polygon without points. */
export function distanceToEdge(polygon: Polygon, x: number, y: number): number {
  return nearestOnEdge(polygon, x, y).distanceMm;
}

/** The point of the polygon furthest from (x, y). Throws for a polygon without points. */
export function furthestPoint(polygon: Polygon, x: number, y: number): Near {
  let furthest: Near | undefined;
  forEachEdge(polygon, (px, py) => {
    const distanceMm = Math.hypot(px - x, py - y);
    if (furthest === undefined || distanceMm > furthest.distanceMm) furthest = { point: { x: px, y: py }, distanceMm };
  });
  if (furthest === undefined) throw new RangeError('a polygon without points has no furthest point');
  return furthest;
}
