/**
 * What a round cutter leaves in an inside corner that is drawn tighter than the cutter.
 * Source: derived from the two arcs tangent to both walls, checked by polar integration; worked values in
 * tests/published/corner.test.ts. For a right angle the area is 0.2146 · (R² − r²).
 */

/**
 * Wood left in the corner, mm²: (R² − r²) · (cot(θ/2) − (π − θ)/2). Zero where the cutter fits.
 * `cutterRadiusMm` R and `drawnRadiusMm` r are ≥ 0; `angleDeg` θ between the walls, above 0 and below 180.
 */
export function cornerRestArea(cutterRadiusMm: number, drawnRadiusMm: number, angleDeg: number): number {
  const theta = walls(cutterRadiusMm, drawnRadiusMm, angleDeg);
  if (cutterRadiusMm <= drawnRadiusMm) return 0;
  return (cutterRadiusMm ** 2 - drawnRadiusMm ** 2) * (1 / Math.tan(theta / 2) - (Math.PI - theta) / 2);
}

/** Widest gap between the cut and the drawn corner, on the bisector, mm: (R − r) · (1/sin(θ/2) − 1). */
export function cornerRestGap(cutterRadiusMm: number, drawnRadiusMm: number, angleDeg: number): number {
  const theta = walls(cutterRadiusMm, drawnRadiusMm, angleDeg);
  if (cutterRadiusMm <= drawnRadiusMm) return 0;
  return (cutterRadiusMm - drawnRadiusMm) * (1 / Math.sin(theta / 2) - 1);
}

function walls(cutterRadiusMm: number, drawnRadiusMm: number, angleDeg: number): number {
  if (!(cutterRadiusMm >= 0 && drawnRadiusMm >= 0 && angleDeg > 0 && angleDeg < 180)) {
    throw new RangeError('a corner needs radii of zero or more and an angle between 0 and 180 degrees');
  }
  return (angleDeg * Math.PI) / 180;
}
