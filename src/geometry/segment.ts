/**
 * True curves of a path: lines, quadratic and cubic Béziers, and elliptical arcs in centre form. Nothing is approximated
 * here; flatten.ts is the one place where a curve becomes a polyline, to a stated error.
 */
import type { Point } from './axes.ts';

export interface Line {
  readonly kind: 'line';
  readonly from: Point;
  readonly to: Point;
}

export interface Quadratic {
  readonly kind: 'quadratic';
  readonly from: Point;
  readonly control: Point;
  readonly to: Point;
}

export interface Cubic {
  readonly kind: 'cubic';
  readonly from: Point;
  readonly control1: Point;
  readonly control2: Point;
  readonly to: Point;
}

/** Part of an ellipse: centre + turn(rotationRad) · (radiusX · cos a, radiusY · sin a), a from startRad by sweepRad. */
export interface Arc {
  readonly kind: 'arc';
  readonly from: Point;
  readonly to: Point;
  readonly centre: Point;
  readonly radiusX: number;
  readonly radiusY: number;
  readonly rotationRad: number;
  readonly startRad: number;
  /** Positive turns counter-clockwise. */
  readonly sweepRad: number;
}

export type Segment = Line | Quadratic | Cubic | Arc;

/** Segments that join end to start. `closed` is true where the path said so; an area is closed by a line regardless. */
export interface Subpath {
  readonly segments: readonly Segment[];
  readonly closed: boolean;
}

export type Path = readonly Subpath[];

/** Point of the true curve at t from 0 (from) to 1 (to). */
export function pointAt(segment: Segment, t: number): Point {
  // The end points as given, not as recomputed: neighbours then meet without a gap of rounding.
  if (t === 0) return segment.from;
  if (t === 1) return segment.to;
  const u = 1 - t;
  const { from, to } = segment;
  if (segment.kind === 'line') return combine([from, u], [to, t]);
  if (segment.kind === 'quadratic') return combine([from, u * u], [segment.control, 2 * u * t], [to, t * t]);
  if (segment.kind === 'cubic') {
    const { control1, control2 } = segment;
    return combine([from, u * u * u], [control1, 3 * u * u * t], [control2, 3 * u * t * t], [to, t * t * t]);
  }
  const angle = segment.startRad + t * segment.sweepRad;
  const turned = turn(segment, segment.radiusX * Math.cos(angle), segment.radiusY * Math.sin(angle));
  return { x: segment.centre.x + turned.x, y: segment.centre.y + turned.y };
}

/** First and second derivative of a curve by its t. */
export interface Derivatives {
  readonly first: Point;
  readonly second: Point;
}

export function derivativesAt(segment: Segment, t: number): Derivatives {
  const u = 1 - t;
  const { from, to } = segment;
  if (segment.kind === 'line') return { first: combine([to, 1], [from, -1]), second: { x: 0, y: 0 } };
  if (segment.kind === 'quadratic') {
    const { control } = segment;
    return {
      first: combine([from, -2 * u], [control, 2 * (u - t)], [to, 2 * t]),
      second: combine([from, 2], [control, -4], [to, 2]),
    };
  }
  if (segment.kind === 'cubic') {
    const { control1: c1, control2: c2 } = segment;
    return {
      first: combine([from, -3 * u * u], [c1, 3 * u * (u - 2 * t)], [c2, 3 * t * (2 * u - t)], [to, 3 * t * t]),
      second: combine([from, 6 * u], [c1, 6 * t - 12 * u], [c2, 6 * u - 12 * t], [to, 6 * t]),
    };
  }
  const { radiusX, radiusY, sweepRad } = segment;
  const angle = segment.startRad + t * sweepRad;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return {
    first: turn(segment, -radiusX * sin * sweepRad, radiusY * cos * sweepRad),
    second: turn(segment, -radiusX * cos * sweepRad ** 2, -radiusY * sin * sweepRad ** 2),
  };
}

function turn(arc: Arc, x: number, y: number): Point {
  const [cos, sin] = [Math.cos(arc.rotationRad), Math.sin(arc.rotationRad)];
  return { x: cos * x - sin * y, y: sin * x + cos * y };
}

function combine(...terms: readonly (readonly [Point, number])[]): Point {
  let x = 0;
  let y = 0;
  for (const [point, weight] of terms) {
    x += weight * point.x;
    y += weight * point.y;
  }
  return { x, y };
}
