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

/** What a pocket takes over a point of its region at that y; one that opens to a face goes on beyond it. */
export function pocketSpan({ floor, opens, roofMm }: Pocket, y: number): Span {
  const z = floorAt(floor, y);
  if (opens === 'back') return { low: -Infinity, high: z };
  return { low: z, high: opens === 'top' ? Infinity : roofMm! };
}

/** The span of an upright section through a tube, its flat ends included; undefined beside it. */
export const tubeSpan = (tube: Tube, x: number, y: number): Span | undefined => tubeSpans(tube)(x, y);

/** The same for many places of one tube. */
export function tubeSpans({ from, to, radiusMm }: Tube): (x: number, y: number) => Span | undefined {
  const [dx, dy, dz] = [to.xMm - from.xMm, to.yMm - from.yMm, to.zMm - from.zMm];
  const length = Math.hypot(dx, dy, dz);
  const [ux, uy, uz] = [dx / length, dy / length, dz / length];
  const a = ux * ux + uy * uy;
  const upright = { low: Math.min(from.zMm, to.zMm), high: Math.max(from.zMm, to.zMm) };
  return (x, y) => {
    const px = x - from.xMm;
    const py = y - from.yMm;
    // |p + z·k − (that along the axis)|² = r², in z: a z² + 2 b z + c = 0, z counted from the start of the axis.
    const along = px * ux + py * uy;
    const b = -along * uz;
    const c = px * px + py * py - along * along - radiusMm * radiusMm;
    // An upright one is all or nothing.
    if (a === 0) return c < 0 ? upright : undefined;
    const inside = b * b - a * c;
    if (inside <= 0) return undefined;
    const root = Math.sqrt(inside);
    let low = (-b - root) / a;
    let high = (-b + root) / a;
    // Between its ends: 0 ≤ along + z·uz ≤ length.
    if (uz === 0) {
      if (along < 0 || along > length) return undefined;
    } else {
      const atStart = -along / uz;
      const atEnd = (length - along) / uz;
      low = Math.max(low, Math.min(atStart, atEnd));
      high = Math.min(high, Math.max(atStart, atEnd));
    }
    return low < high ? { low: from.zMm + low, high: from.zMm + high } : undefined;
  };
}
