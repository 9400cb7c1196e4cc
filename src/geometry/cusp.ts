/**
 * Ridges that a turning cutter leaves between two paths beside each other, mm above the surface that was meant, at right
 * angles to it. Paths are taken to run level and to step up the slope: of all ways to cut it the one that leaves most.
 */

/** The end of a cutter: flat in the middle, then a quarter round. A ball has no flat, an end mill with sharp edges no round. */
export interface CutterEnd {
  readonly radiusMm: number;
  readonly cornerMm: number;
}

/** Halvings of the span the crossing lies in: 2⁻⁶⁰ of a cutter is less than a double can hold. */
const HALVINGS = 60;

/**
 * Exact on a plane. Two neighbours, `stepMm` apart in plan, cross at one place; its height over the plane that both touch.
 * Of a ball it is R − √(R² − (s / 2cos α)²) (chord of a circle); of a sharp end mill s · sin α. Infinity where they do not
 * reach each other.
 */
export function cuspOnPlane({ radiusMm, cornerMm }: CutterEnd, stepMm: number, slopeRad: number): number {
  if (stepMm >= 2 * radiusMm) return Infinity;
  const slope = Math.tan(slopeRad);
  const flatMm = radiusMm - cornerMm;
  const end = (u: number): number => {
    const beyond = Math.min(Math.max(Math.abs(u) - flatMm, 0), cornerMm);
    return cornerMm - Math.sqrt(cornerMm ** 2 - beyond ** 2);
  };
  const upper = (x: number): number => stepMm * slope + end(x - stepMm);
  // The lower one is under the upper one at the start, and rises past it; or its side is reached first.
  let [from, to] = [stepMm - radiusMm, radiusMm];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (from + to) / 2;
    if (end(middle) < upper(middle)) from = middle;
    else to = middle;
  }
  const touches = cornerMm - cornerMm * Math.cos(slopeRad) - (flatMm + cornerMm * Math.sin(slopeRad)) * slope;
  return (upper(to) - to * slope - touches) * Math.cos(slopeRad);
}

/**
 * Of a ball on a surface that bends across the paths, exact on a circle; near s²/8 · (1/R + 1/ρ), and − where it is hollow.
 * `bendPerMm`: 1/ρ, above 0 where it bulges. Infinity where the ball does not fit into the hollow.
 */
export function cuspOnBend(radiusMm: number, stepMm: number, bendPerMm: number): number {
  if (bendPerMm === 0) return cuspOnPlane({ radiusMm, cornerMm: radiusMm }, stepMm, 0);
  const ownMm = 1 / Math.abs(bendPerMm);
  const centreMm = bendPerMm > 0 ? ownMm + radiusMm : ownMm - radiusMm;
  if (centreMm <= 0) return Infinity;
  const half = Math.asin(Math.min(1, stepMm / (2 * ownMm)));
  const beside = centreMm * Math.sin(half);
  if (beside >= radiusMm) return Infinity;
  const along = Math.sqrt(radiusMm ** 2 - beside ** 2);
  const out = centreMm * Math.cos(half);
  return bendPerMm > 0 ? out - along - ownMm : ownMm - out - along;
}

/** The widest step of a ball that leaves no more than that on a plane: s = 2cos α · √(2Rh − h²). */
export const stepOfBall = (radiusMm: number, cuspMm: number, slopeRad: number): number =>
  2 * Math.cos(slopeRad) * Math.sqrt(Math.max(0, 2 * radiusMm * cuspMm - cuspMm ** 2));
