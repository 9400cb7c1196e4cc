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
  let x0 = polygon.at(-2)!;
  let y0 = polygon.at(-1)!;
  for (let i = 0; i < polygon.length; i += 2) {
    const x1 = polygon[i]!;
    const y1 = polygon[i + 1]!;
    if (isRightOf(x0, y0, x1, y1, x, y)) inside = !inside;
    x0 = x1;
    y0 = y1;
  }
  return inside;
}

/** Whether a line from (x, y) to the right crosses the edge: an odd number of times from inside. */
export const isRightOf = (x0: number, y0: number, x1: number, y1: number, x: number, y: number): boolean =>
  y0 > y !== y1 > y && x < x0 + ((y - y0) * (x1 - x0)) / (y1 - y0);

/** True inside the region: in an outer ring and in none of its holes. Of many points, `banded` is faster. */
export function regionContains(region: Region, x: number, y: number): boolean {
  let inside = false;
  for (const ring of region) if (contains(ring, x, y)) inside = !inside;
  return inside;
}

/** The point of the edge nearest to (x, y), and the distance in mm, never negative. Throws for a polygon without points. */
export function nearestOnEdge(polygon: Polygon, x: number, y: number): Near {
  // A plain loop: it runs millions of times, and a call for each edge would take most of it.
  let bestX = NaN;
  let bestY = NaN;
  let best = Infinity;
  let x0 = polygon.at(-2)!;
  let y0 = polygon.at(-1)!;
  for (let i = 0; i < polygon.length; i += 2) {
    const x1 = polygon[i]!;
    const y1 = polygon[i + 1]!;
    const dx = x1 - x0;
    const dy = y1 - y0;
    const squared = dx * dx + dy * dy;
    const t = squared === 0 ? 0 : Math.min(1, Math.max(0, ((x - x0) * dx + (y - y0) * dy) / squared));
    const px = x0 + t * dx;
    const py = y0 + t * dy;
    const away = (px - x) ** 2 + (py - y) ** 2;
    if (away < best) {
      bestX = px;
      bestY = py;
      best = away;
    }
    x0 = x1;
    y0 = y1;
  }
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
