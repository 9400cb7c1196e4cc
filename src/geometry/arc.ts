/**
 * Elliptical arcs of path syntax: from end points, radii and flags to centre form.
 * Source: W3C, SVG 2, appendix B (implementation notes), B.2.4 'Conversion from endpoint to center parameterization' and
 * B.2.5 'Correction of out-of-range radii'.
 */
import type { Point } from './axes.ts';
import type { Arc, Line } from './segment.ts';

export interface ArcEnds {
  readonly from: Point;
  readonly to: Point;
  /** mm; the sign is dropped. Zero makes a straight line. Radii too small to reach are scaled up until they do. */
  readonly radiusX: number;
  readonly radiusY: number;
  /** Angle of the ellipse's x axis. */
  readonly rotationDeg: number;
  /** Take the way round longer than half a turn. */
  readonly large: boolean;
  /** Turn counter-clockwise in our axes. */
  readonly sweep: boolean;
}

/** An arc in centre form; a line where a radius is zero; nothing where both ends are one point. */
export function arcFromEnds(ends: ArcEnds): Arc | Line | undefined {
  const { from, to } = ends;
  if (from.x === to.x && from.y === to.y) return undefined;
  if (ends.radiusX === 0 || ends.radiusY === 0) return { kind: 'line', from, to };

  const rotationRad = ((ends.rotationDeg % 360) * Math.PI) / 180;
  const [cos, sin] = [Math.cos(rotationRad), Math.sin(rotationRad)];
  // Half the chord, in the ellipse's own axes (B.2.4, step 1).
  const [dx, dy] = [(from.x - to.x) / 2, (from.y - to.y) / 2];
  const [hx, hy] = [cos * dx + sin * dy, cos * dy - sin * dx];

  const reach = Math.hypot(hx / ends.radiusX, hy / ends.radiusY);
  const scale = Math.max(1, reach);
  const [radiusX, radiusY] = [Math.abs(ends.radiusX) * scale, Math.abs(ends.radiusY) * scale];
  // On the unit circle: the chord's half (ux, uy) and the distance of its middle from the centre (step 2).
  const [ux, uy] = [hx / radiusX, hy / radiusY];
  const half = Math.hypot(ux, uy);
  const away = Math.sqrt(Math.max(0, 1 - half * half)) * (ends.large === ends.sweep ? -1 : 1);
  const [cx, cy] = reach >= 1 ? [0, 0] : [(away * uy) / half, (-away * ux) / half];

  const startRad = Math.atan2(uy - cy, ux - cx);
  const turned = Math.atan2(-uy - cy, -ux - cx) - startRad;
  return {
    kind: 'arc',
    from,
    to,
    centre: {
      x: cos * cx * radiusX - sin * cy * radiusY + (from.x + to.x) / 2,
      y: sin * cx * radiusX + cos * cy * radiusY + (from.y + to.y) / 2,
    },
    radiusX,
    radiusY,
    rotationRad,
    startRad,
    sweepRad: sweepOf(turned, ends.sweep),
  };
}

/** The turn brought into 0…360° for a sweep, −360°…0 without. */
function sweepOf(turnedRad: number, sweep: boolean): number {
  if (sweep && turnedRad < 0) return turnedRad + 2 * Math.PI;
  if (!sweep && turnedRad > 0) return turnedRad - 2 * Math.PI;
  return turnedRad;
}
