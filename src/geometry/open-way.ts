/** Which way is open from a point on the edge of a polygon. */
import type { Point } from './axes.ts';
import { forEachEdge, type Polygon } from './polygon.ts';

/**
 * The middle of all directions, a unit vector, in which a straight line from the first point of a counter-clockwise polygon
 * meets the polygon nowhere else; undefined where there is none. The polygon doesn't cross itself.
 *
 * Walk round the polygon and watch it from that point: the bearing changes without a jump, so what it sweeps over is
 * one stretch of directions, and each of them is blocked.
 */
export function openWay(polygon: Polygon): Point | undefined {
  const [x = 0, y = 0] = polygon;
  const [dx, dy] = [polygon[2]! - x, polygon[3]! - y];
  let bearing = Math.atan2(dy, dx);
  let [least, most] = [bearing, bearing];
  const last = polygon.length / 2 - 1;
  forEachEdge(polygon, (x0, y0, x1, y1, index) => {
    if (index === 0 || index === last) return;
    const [ax, ay, bx, by] = [x0 - x, y0 - y, x1 - x, y1 - y];
    bearing += Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
    least = Math.min(least, bearing);
    most = Math.max(most, bearing);
  });
  if (most - least >= 2 * Math.PI) return undefined;
  const middle = (least + most) / 2 + Math.PI;
  return { x: Math.cos(middle), y: Math.sin(middle) };
}
