/**
 * A body as a solid: two faces over an outline, less what each cut takes. z runs from the back (0, the plane of the machined
 * back) to the top. Sides are upright: what the perimeter cutter leaves.
 */
import type { Polygon, Region } from '../polygon.ts';
import type { Face } from './face.ts';
import { depthOn } from './face.ts';

/** A level or sloping plane: z = zMm + slope · (y − yMm). A floor slopes along the centreline only. */
export interface Floor {
  readonly zMm: number;
  /** mm of z for each mm of y. */
  readonly slope: number;
  readonly yMm: number;
}

export const level = (zMm: number): Floor => ({ zMm, slope: 0, yMm: 0 });

export const floorAt = ({ zMm, slope, yMm }: Floor, y: number): number => zMm + slope * (y - yMm);

/** What a cavity or an upright hole takes: all over its region, from its floor to the face it opens to. */
export interface Pocket {
  readonly kind: 'pocket';
  readonly id: string;
  readonly region: Region;
  readonly opens: 'top' | 'back' | 'glue-face';
  readonly floor: Floor;
  /** Of one that opens to the glue face: where that lies, and the cap closes it. */
  readonly roofMm: number | undefined;
}

/** A drilled channel or a bore from the edge: a round bar from one point to another. */
export interface Tube {
  readonly kind: 'tube';
  readonly id: string;
  readonly from: Point3;
  readonly to: Point3;
  readonly radiusMm: number;
}

export interface Point3 {
  readonly xMm: number;
  readonly yMm: number;
  readonly zMm: number;
}

export type Void = Pocket | Tube;

export interface Solid {
  readonly outline: Polygon;
  /** z of the top's high plane. */
  readonly heightMm: number;
  readonly top: Face;
  readonly back: Face;
  readonly voids: readonly Void[];
}

/** z of the carved top, before any cavity. */
export const topAt = (solid: Solid, x: number, y: number): number => solid.heightMm - depthOn(solid.top, x, y);

/** z of the back, before any cavity. */
export const backAt = (solid: Solid, x: number, y: number): number => depthOn(solid.back, x, y);

/** z from … to that a void takes at (x, y), whether or not there is wood; undefined where it is not over the point. */
export interface Span {
  readonly low: number;
  readonly high: number;
}

/** The span of an upright section through a tube, its flat ends included; undefined beside it. */
export function tubeSpan({ from, to, radiusMm }: Tube, x: number, y: number): Span | undefined {
  const [dx, dy, dz] = [to.xMm - from.xMm, to.yMm - from.yMm, to.zMm - from.zMm];
  const length = Math.hypot(dx, dy, dz);
  const [ux, uy, uz] = [dx / length, dy / length, dz / length];
  const [px, py] = [x - from.xMm, y - from.yMm];
  // |p + z·k − (that along the axis)|² = r², in z: a z² + 2 b z + c = 0, z counted from the start of the axis.
  const along = px * ux + py * uy;
  const a = 1 - uz * uz;
  const b = -along * uz;
  const c = px * px + py * py - along * along - radiusMm * radiusMm;
  const inside = b * b - a * c;
  if (a === 0 || inside <= 0) return undefined;
  const root = Math.sqrt(inside);
  // Between its ends: 0 ≤ along + z·uz ≤ length.
  const [atStart, atEnd] = uz === 0 ? [along, along] : [-along / uz, (length - along) / uz];
  if (uz === 0 && (along < 0 || along > length)) return undefined;
  const low = uz === 0 ? (-b - root) / a : Math.max((-b - root) / a, Math.min(atStart, atEnd));
  const high = uz === 0 ? (-b + root) / a : Math.min((-b + root) / a, Math.max(atStart, atEnd));
  return low < high ? { low: from.zMm + low, high: from.zMm + high } : undefined;
}
