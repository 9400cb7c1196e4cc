/** What a blade of some width takes along a straight line: a strip with round ends. */
import type { Point } from './axes.ts';
import type { Polygon } from './polygon.ts';

/** Points of each round end, both of its corners included. */
const END_POINTS = 33;

/**
 * All that lies no further from the straight line between two points than `radiusMm`, above zero. Its round ends are drawn
 * round the true arc, so that nothing of it is left out. Counter-clockwise. The two points may be one.
 */
export function stadium(from: Point, to: Point, radiusMm: number): Polygon {
  const along = Math.atan2(to.y - from.y, to.x - from.x);
  const step = Math.PI / (END_POINTS - 1);
  // Corners outside the arc, so that its chords touch it.
  const cornerMm = radiusMm / Math.cos(step / 2);
  const end = (at: Point, startRad: number): number[] =>
    Array.from({ length: END_POINTS }, (_, k) => {
      const angle = startRad + step * k;
      return [at.x + cornerMm * Math.cos(angle), at.y + cornerMm * Math.sin(angle)];
    }).flat();
  return Float64Array.from([...end(to, along - Math.PI / 2), ...end(from, along + Math.PI / 2)]);
}
