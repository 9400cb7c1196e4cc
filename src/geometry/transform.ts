/** Moves of polygons that keep size and the way round. Angles in degrees, counter-clockwise (axes.ts). */
import { direction, type Point } from './axes.ts';
import type { Polygon } from './polygon.ts';

/** Where a shape's own origin goes, and by how much it is turned about it first. */
export interface Placement {
  readonly xMm: number;
  readonly yMm: number;
  /** Counter-clockwise; absent: not turned. */
  readonly angleDeg?: number;
}

/** Moved by (dxMm, dyMm). */
export function translate(polygon: Polygon, dxMm: number, dyMm: number): Polygon {
  return mapPoints(polygon, (x, y) => ({ x: x + dxMm, y: y + dyMm }));
}

/** Turned counter-clockwise about a point, the origin unless said. Whole quarter turns add no rounding. */
export function rotate(polygon: Polygon, angleDeg: number, about: Point = { x: 0, y: 0 }): Polygon {
  const { x: cos, y: sin } = direction(angleDeg);
  return mapPoints(polygon, (x, y) => {
    const [dx, dy] = [x - about.x, y - about.y];
    return { x: about.x + cos * dx - sin * dy, y: about.y + sin * dx + cos * dy };
  });
}

/** Turned about its own origin, then moved. */
export function place(polygon: Polygon, at: Placement): Polygon {
  return translate(rotate(polygon, at.angleDeg ?? 0), at.xMm, at.yMm);
}

/** The other hand: x becomes −x. Point order is turned round too, so a counter-clockwise polygon stays one. */
export function mirror(polygon: Polygon): Polygon {
  const result = new Float64Array(polygon.length);
  for (let i = 0; i < polygon.length; i += 2) {
    // 0 − x, as −0 would show in a comparison.
    result[polygon.length - 2 - i] = 0 - polygon[i]!;
    result[polygon.length - 1 - i] = polygon[i + 1]!;
  }
  return result;
}

function mapPoints(polygon: Polygon, move: (x: number, y: number) => Point): Polygon {
  const result = new Float64Array(polygon.length);
  for (let i = 0; i < polygon.length; i += 2) {
    const moved = move(polygon[i]!, polygon[i + 1]!);
    result[i] = moved.x;
    result[i + 1] = moved.y;
  }
  return result;
}
