/** Relief cut into a face beyond a line: a plane, or a hollow. */
export type Contour = {
  /** A point of the line it begins at, mm. */
  readonly xMm: number;
  readonly yMm: number;
  /** Unit vector at right angles to that line, towards the wood that goes. */
  readonly towardX: number;
  readonly towardY: number;
} & (
  | { readonly kind: 'plane'; /** mm deeper for each mm away from the line. */ readonly slope: number }
  /** Part of a cylinder along the line: `widthMm` across, `depthMm` deep in the middle. */
  | { readonly kind: 'dish'; readonly widthMm: number; readonly depthMm: number }
);

/** mm from its line at (x, y), towards the wood that goes; below zero on the side it leaves alone. */
export const awayFrom = (contour: Contour, x: number, y: number): number =>
  (x - contour.xMm) * contour.towardX + (y - contour.yMm) * contour.towardY;

/** How deep it goes below the face at (x, y), mm; 0 outside of it. */
export function contourDepth(contour: Contour, x: number, y: number): number {
  const away = awayFrom(contour, x, y);
  if (away <= 0) return 0;
  if (contour.kind === 'plane') return contour.slope * away;
  const { widthMm, depthMm } = contour;
  if (away >= widthMm) return 0;
  const half = widthMm / 2;
  // The circle through both ends and the deepest point: h of the chord and its rise.
  const radius = (half * half + depthMm * depthMm) / (2 * depthMm);
  return Math.sqrt(radius * radius - (away - half) ** 2) - (radius - depthMm);
}
