/**
 * Top or back of a body as one surface over the plan. Heights are given as seen from outside: `high` is the outermost plane
 * of the face, and every shape takes wood off it.
 */
import type { Contour } from './contour.ts';
import { contourDepth } from './contour.ts';
import type { EdgeLine } from './edge-line.ts';
import type { Height, Profile } from './profile.ts';
import { furthestOf, profileAt } from './profile.ts';

export interface Face {
  /** How far the low height (the land) lies below the high one, mm; 0 of a flat face. */
  readonly riseMm: number;
  /** Shape by the distance from the edge, or from the stretch of it that is bevelled. */
  readonly carve: { readonly from: EdgeLine; readonly profile: Profile };
  readonly contours: readonly Contour[];
  /** The outline: for what follows all of the edge. */
  readonly edge: EdgeLine;
  /** Quarter round along the edge, mm; 0: none. */
  readonly roundMm: number;
  /** Ledge for a binding, down from the land at the edge. */
  readonly ledge: { readonly widthMm: number; readonly depthMm: number } | undefined;
}

/** Where the surface lies between land and high plane at (x, y), and how far below that. */
export function heightOn(face: Face, x: number, y: number): Height {
  const { profile, from } = face.carve;
  let height = profileAt(profile, from.at(x, y, furthestOf(profile)));
  for (const contour of face.contours) {
    const depth = contourDepth(contour, x, y);
    if (depth > downBy(face, height)) height = { share: 1, dropMm: depth };
  }
  if (face.ledge === undefined && face.roundMm === 0) return height;
  const d = face.edge.at(x, y, Math.max(face.roundMm, face.ledge?.widthMm ?? 0));
  if (face.roundMm > 0 && d < face.roundMm) {
    height = { share: height.share, dropMm: height.dropMm + roundDrop(face.roundMm, d) };
  }
  if (face.ledge && d < face.ledge.widthMm && face.riseMm + face.ledge.depthMm > downBy(face, height)) {
    // Down from the land; a flat face has no other height than its own.
    height = { share: face.riseMm === 0 ? 1 : 0, dropMm: face.ledge.depthMm };
  }
  return height;
}

/** Carve and contours alone. */
export const withoutEdge = (face: Face): Face => ({ ...face, roundMm: 0, ledge: undefined });

/** mm below the high plane. */
export const downBy = ({ riseMm }: Pick<Face, 'riseMm'>, { share, dropMm }: Height): number =>
  (1 - share) * riseMm + dropMm;

/** mm below the high plane at (x, y). */
export const depthOn = (face: Face, x: number, y: number): number => downBy(face, heightOn(face, x, y));

/** What a quarter round of that radius takes off at a distance d from the edge: r − √(r² − (r − d)²). */
export const roundDrop = (radiusMm: number, d: number): number =>
  radiusMm - Math.sqrt(radiusMm ** 2 - (radiusMm - d) ** 2);
