/** How far two polygons that do not overlap are apart, and a point from the edge of a region. */
import type { Point } from './axes.ts';
import { bounds } from './measure.ts';
import type { Near } from './nearness.ts';
import { nearestOnEdge } from './nearness.ts';
import type { Polygon, Region } from './polygon.ts';

export interface Apart {
  readonly distanceMm: number;
  /** The two points nearest to each other. */
  readonly a: Point;
  readonly b: Point;
}

/**
 * Exact for polygons whose edges do not cross: the nearest pair has a corner of one of them. `upMm` is how far the two points
 * of a pair are apart upright; it must change little along an edge, as the nearest of each edge is looked for in plan.
 */
export function polygonsApart(a: Polygon, b: Polygon, upMm: (a: Point, b: Point) => number = () => 0): Apart {
  const from = cornersTo(a, b, upMm, Infinity)!;
  const to = cornersTo(b, a, (p, q) => upMm(q, p), from.distanceMm ** 2 * (1 + HAIR));
  return !to || from.distanceMm <= to.distanceMm ? from : { distanceMm: to.distanceMm, a: to.b, b: to.a };
}

/** Relative, and mm: for rounding. */
const HAIR = 1e-9;

/**
 * The nearest pair that is less than so many mm² apart. Plain loops, and a corner too far from all of the other polygon is passed over: of most pairs of cuts that is most. So is an
 * edge out of reach at a glance, beyond what is the least so far by a hair for rounding.
 */
function cornersTo(a: Polygon, b: Polygon, upMm: (a: Point, b: Point) => number, withinMm2: number): Apart | undefined {
  const box = bounds(b)!;
  let best: Apart | undefined;
  let least = withinMm2;
  let reach = reachOf(least);
  for (let i = 0; i < a.length; i += 2) {
    const x = a[i]!;
    const y = a[i + 1]!;
    const outX = Math.max(0, box.minX - x, x - box.maxX);
    const outY = Math.max(0, box.minY - y, y - box.maxY);
    if (outX * outX + outY * outY >= least) continue;
    for (let j = 0, last = b.length - 2; j < b.length; last = j, j += 2) {
      const x0 = b[last]!;
      const y0 = b[last + 1]!;
      const x1 = b[j]!;
      const y1 = b[j + 1]!;
      if (x0 > x + reach ? x1 > x + reach : x0 < x - reach && x1 < x - reach) continue;
      if (y0 > y + reach ? y1 > y + reach : y0 < y - reach && y1 < y - reach) continue;
      const dx = x1 - x0;
      const dy = y1 - y0;
      const squared = dx * dx + dy * dy;
      const t = squared === 0 ? 0 : Math.min(1, Math.max(0, ((x - x0) * dx + (y - y0) * dy) / squared));
      const ox = x0 + t * dx;
      const oy = y0 + t * dy;
      const across = (ox - x) ** 2 + (oy - y) ** 2;
      if (across >= least) continue;
      const other = { x: ox, y: oy };
      const away = across + upMm({ x, y }, other) ** 2;
      if (away >= least) continue;
      least = away;
      reach = reachOf(least);
      best = { distanceMm: Math.sqrt(away), a: { x, y }, b: other };
    }
  }
  return best;
}

const reachOf = (mm2: number): number => Math.sqrt(mm2) * (1 + HAIR) + HAIR;

/** The nearest points of two regions that do not overlap; `upMm` as above. */
export function regionsApart(a: Region, b: Region, upMm?: (a: Point, b: Point) => number): Apart {
  const pairs = a.flatMap((ring) => b.map((other) => polygonsApart(ring, other, upMm)));
  return pairs.reduce((best, other) => (other.distanceMm < best.distanceMm ? other : best));
}

/** The nearest point on the rings of a region, holes included. Throws for a region without rings. */
export function nearestOnRegion(region: Region, x: number, y: number): Near {
  const near = region.map((ring) => nearestOnEdge(ring, x, y));
  return near.reduce((best, other) => (other.distanceMm < best.distanceMm ? other : best));
}

/** No nearer than this: the gap between their boxes, mm; 0 where the boxes overlap. */
export function boxesApart(a: Polygon, b: Polygon): number {
  const [p, q] = [bounds(a)!, bounds(b)!];
  return Math.hypot(Math.max(0, q.minX - p.maxX, p.minX - q.maxX), Math.max(0, q.minY - p.maxY, p.minY - q.maxY));
}
