/** Points spread along a closed line, where it is free. */
import type { Point } from './axes.ts';
import { signedArea } from './measure.ts';
import { forEachEdge, reversed, type Polygon } from './polygon.ts';

/** How far apart the line is looked at, mm. */
const LOOK_MM = 0.5;

/**
 * `count` points, evenly by the length of what is free: the stretches between them are alike but for what is not. The first
 * is half a step from where the line crosses x = 0 at the greatest y, clockwise. Undefined where nothing is free, or the
 * line does not cross x = 0.
 */
export function spreadAlong(
  line: Polygon,
  count: number,
  isFree: (x: number, y: number) => boolean,
): readonly Point[] | undefined {
  const ring = fromTheNeck(signedArea(line) > 0 ? reversed(line) : line);
  const free = ring?.filter(({ x, y }) => isFree(x, y)) ?? [];
  if (free.length < count) return undefined;
  return Array.from({ length: count }, (_, k) => free[Math.floor(((k + 0.5) * free.length) / count)]!);
}

/** Places along a clockwise line at even steps, from its crossing of x = 0 at the greatest y on. */
function fromTheNeck(line: Polygon): readonly Point[] | undefined {
  let start: { readonly index: number; readonly y: number } | undefined;
  forEachEdge(line, (x0, y0, x1, y1, index) => {
    if (x0 > 0 === x1 > 0) return;
    const y = y0 + (y1 - y0) * (x0 / (x0 - x1));
    if (start === undefined || y > start.y) start = { index, y };
  });
  if (start === undefined) return undefined;
  const n = line.length / 2;
  const corner = (i: number): Point => ({ x: line[2 * (i % n)]!, y: line[2 * (i % n) + 1]! });
  const corners = [{ x: 0, y: start.y }, ...Array.from({ length: n }, (_, k) => corner(start!.index + 1 + k))];
  const places: Point[] = [];
  let due = 0;
  corners.forEach((a, i) => {
    const b = corners[(i + 1) % corners.length]!;
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    for (; due < length; due += LOOK_MM) {
      const t = due / length;
      places.push({ x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) });
    }
    due -= length;
  });
  return places;
}
