/** Part of a closed outline, from one place on it counter-clockwise to another. */
import type { Point } from './axes.ts';
import { forEachEdge, type Polygon } from './polygon.ts';

/** From the place nearest to `from` to the one nearest to `to`, the outline's own corners between them. An open line. */
export function stretch(polygon: Polygon, from: Point, to: Point): Float64Array {
  const count = polygon.length / 2;
  const [first, last] = [placeOn(polygon, from), placeOn(polygon, to)];
  const line = [first.x, first.y];
  const ahead = (last.index - first.index + count) % count;
  // On one edge with the end behind the start: all the way round.
  const corners = ahead === 0 && last.t < first.t ? count : ahead;
  for (let k = 1; k <= corners; k++) {
    const i = (first.index + k) % count;
    line.push(polygon[2 * i]!, polygon[2 * i + 1]!);
  }
  line.push(last.x, last.y);
  return Float64Array.from(line);
}

interface Place extends Point {
  /** The edge it lies on, and how far along that, 0 … 1. */
  readonly index: number;
  readonly t: number;
}

function placeOn(polygon: Polygon, { x, y }: Point): Place {
  let best: Place | undefined;
  let least = Infinity;
  forEachEdge(polygon, (x0, y0, x1, y1, index) => {
    const [dx, dy] = [x1 - x0, y1 - y0];
    const squared = dx * dx + dy * dy;
    const t = squared === 0 ? 0 : Math.min(1, Math.max(0, ((x - x0) * dx + (y - y0) * dy) / squared));
    const place = { x: x0 + t * dx, y: y0 + t * dy, index, t };
    const away = (place.x - x) ** 2 + (place.y - y) ** 2;
    if (away < least) [best, least] = [place, away];
  });
  return best!;
}
