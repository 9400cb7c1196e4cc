/** Sizes of a polygon: area, perimeter, bounds, centroid, longest extent, which way round it runs. */
import type { Point } from './axes.ts';
import { forEachEdge, type Polygon, type Region } from './polygon.ts';

/** mm². Positive where the polygon runs counter-clockwise (shoelace formula). */
export function signedArea(polygon: Polygon): number {
  return momentsOf(polygon).area;
}

/** mm² of a region: outer rings less holes. */
export function regionArea(region: Region): number {
  return region.reduce((sum, ring) => sum + signedArea(ring), 0);
}

/** mm, the closing edge included. */
export function perimeter(polygon: Polygon): number {
  let sum = 0;
  forEachEdge(polygon, (x0, y0, x1, y1) => {
    sum += Math.hypot(x1 - x0, y1 - y0);
  });
  return sum;
}

export function orientation(polygon: Polygon): 'counter-clockwise' | 'clockwise' | 'flat' {
  const area = signedArea(polygon);
  return area > 0 ? 'counter-clockwise' : area < 0 ? 'clockwise' : 'flat';
}

export interface Bounds {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** Upright box around the polygon, mm; undefined for a polygon without points. */
export function bounds(polygon: Polygon): Bounds | undefined {
  if (polygon.length === 0) return undefined;
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 0; i < polygon.length; i += 2) {
    minX = Math.min(minX, polygon[i]!);
    maxX = Math.max(maxX, polygon[i]!);
    minY = Math.min(minY, polygon[i + 1]!);
    maxY = Math.max(maxY, polygon[i + 1]!);
  }
  return { minX, minY, maxX, maxY };
}

/** Centre of area, mm; undefined where the polygon bounds no area. */
export function centroid(polygon: Polygon): Point | undefined {
  const { area, mx, my, x, y } = momentsOf(polygon);
  return area === 0 ? undefined : { x: x + mx / area, y: y + my / area };
}

/** Centre of area of a region, outer rings less holes, mm; undefined where it has no area. */
export function regionCentroid(region: Region): Point | undefined {
  let [area, mx, my] = [0, 0, 0];
  for (const ring of region) {
    const moments = momentsOf(ring);
    area += moments.area;
    mx += moments.mx + moments.x * moments.area;
    my += moments.my + moments.y * moments.area;
  }
  return area === 0 ? undefined : { x: mx / area, y: my / area };
}

export interface Extent {
  readonly from: Point;
  readonly to: Point;
  readonly lengthMm: number;
}

/** The two points furthest apart, whatever the direction; undefined below two points. Every pair is looked at. */
export function longestExtent(polygon: Polygon): Extent | undefined {
  let best: Extent | undefined;
  for (let i = 0; i < polygon.length; i += 2) {
    const from = { x: polygon[i]!, y: polygon[i + 1]! };
    for (let j = i + 2; j < polygon.length; j += 2) {
      const lengthMm = Math.hypot(polygon[j]! - from.x, polygon[j + 1]! - from.y);
      if (best === undefined || lengthMm > best.lengthMm) {
        best = { from, to: { x: polygon[j]!, y: polygon[j + 1]! }, lengthMm };
      }
    }
  }
  return best;
}

/** Area and first moments about the polygon's first point (x, y): far from the origin no digits are lost. */
function momentsOf(polygon: Polygon): { area: number; mx: number; my: number; x: number; y: number } {
  const [x = 0, y = 0] = polygon;
  let [area, mx, my] = [0, 0, 0];
  forEachEdge(polygon, (x0, y0, x1, y1) => {
    const cross = (x0 - x) * (y1 - y) - (x1 - x) * (y0 - y);
    area += cross / 2;
    mx += (cross * (x0 + x1 - 2 * x)) / 6;
    my += (cross * (y0 + y1 - 2 * y)) / 6;
  });
  return { area, mx, my, x, y };
}
