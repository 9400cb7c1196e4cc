/**
 * Curves to polygons. Every vertex lies on the true curve, and no point of the curve is further than the chord error
 * from the polygon. So a convex curve's polygon lies inside it: its area is short by at most 2/3 · chord · perimeter.
 */
import { SAME_POINT_MM, type Point } from './axes.ts';
import type { Polygon } from './polygon.ts';
import { pointAt, type Cubic, type Path, type Quadratic, type Segment, type Subpath } from './segment.ts';

/** Default chord error, mm: a hundredth, well under what a saw line, a template or a height field can show. */
export const CHORD_MM = 0.01;

/**
 * One closed polygon for each subpath, closed by a straight line where the path leaves it open. A subpath of fewer than
 * three different points bounds nothing and gives no polygon. Throws where chordMm is not above zero.
 */
export function flatten(path: Path, chordMm = CHORD_MM): Polygon[] {
  if (!(chordMm > 0)) throw new RangeError('chordMm must be above zero');
  return path.map((subpath) => polygonOf(subpath, chordMm)).filter((polygon) => polygon.length >= 6);
}

/**
 * Equal steps in t that keep the chord error. Bézier: |curve − chord| ≤ h² · max|B″| / 8 (error of linear
 * interpolation). Arc: the sagitta of the unit circle, r · (1 − cos(step/2)), grown by the longer radius.
 */
export function stepsFor(segment: Segment, chordMm: number): number {
  if (segment.kind === 'line') return 1;
  if (segment.kind === 'arc') {
    const radius = Math.max(segment.radiusX, segment.radiusY);
    // At most a third of a turn a step, so that even a tiny circle stays a polygon.
    const step = Math.min((2 * Math.PI) / 3, 4 * Math.asin(Math.sqrt(Math.min(1, chordMm / (2 * radius)))));
    return Math.max(1, Math.ceil(Math.abs(segment.sweepRad) / step));
  }
  return Math.max(1, Math.ceil(Math.sqrt(mostBend(segment) / (8 * chordMm))));
}

/** Largest |B″| of a Bézier: that of a cubic runs straight between its values at both ends. */
function mostBend(curve: Quadratic | Cubic): number {
  if (curve.kind === 'quadratic') return 2 * secondDifference(curve.from, curve.control, curve.to);
  const { from, control1, control2, to } = curve;
  return 6 * Math.max(secondDifference(from, control1, control2), secondDifference(control1, control2, to));
}

function polygonOf(subpath: Subpath, chordMm: number): Polygon {
  const numbers: number[] = [];
  const first = subpath.segments[0];
  if (first !== undefined) numbers.push(first.from.x, first.from.y);
  for (const segment of subpath.segments) {
    const steps = stepsFor(segment, chordMm);
    for (let i = 1; i <= steps; i++) addUnlessSame(numbers, pointAt(segment, i / steps));
  }
  while (numbers.length > 2 && endsWhereItBegins(numbers)) numbers.length -= 2;
  return Float64Array.from(numbers);
}

function addUnlessSame(numbers: number[], point: Point): void {
  const dx = point.x - numbers.at(-2)!;
  const dy = point.y - numbers.at(-1)!;
  if (Math.hypot(dx, dy) > SAME_POINT_MM) numbers.push(point.x, point.y);
}

function endsWhereItBegins(numbers: readonly number[]): boolean {
  return Math.hypot(numbers[0]! - numbers.at(-2)!, numbers[1]! - numbers.at(-1)!) <= SAME_POINT_MM;
}

function secondDifference(a: Point, b: Point, c: Point): number {
  return Math.hypot(a.x - 2 * b.x + c.x, a.y - 2 * b.y + c.y);
}
