/**
 * What two pins leave open. The first pin is round and holds both ways, the second holds across the line of the two only: a
 * diamond, or a round one whose hold along the line is not counted on. Clearances are hole less pin, on the diameter. Derived
 * here: a rigid plate whose first hole may move in a circle of c1/2 and whose second, across, by c2/2.
 *
 *   across the line, at a along it from the first pin:  e(a) = c1/2·|1 − a/L| + c2/2·|a/L|
 *   rotation:                                           θ = (c1 + c2)/(2L)
 */
export interface Clearances {
  readonly first: number;
  readonly second: number;
}

export const acrossError = ({ first, second }: Clearances, along: number, spacing: number): number =>
  (first / 2) * Math.abs(1 - along / spacing) + (second / 2) * Math.abs(along / spacing);

/** Radians, at most, either way. */
export const rotationError = ({ first, second }: Clearances, spacing: number): number =>
  (first + second) / (2 * spacing);

interface Spot {
  readonly xMm: number;
  readonly yMm: number;
}

/** How much further a place moves, whichever way, than the plate moves at each pin. */
export interface Reach {
  /** Of a move of the first hole, any way: the largest singular value of [1, b/L; 0, 1 − a/L]. */
  readonly first: number;
  /** Of a move of the second hole across the line: √(a² + b²)/L. */
  readonly second: number;
}

/** Of a place at a along the line of the pins from the first, and b off it. */
export function reachOf(first: Spot, second: Spot, at: Spot): Reach {
  const [dx, dy] = [second.xMm - first.xMm, second.yMm - first.yMm];
  const spacing = Math.hypot(dx, dy);
  const [px, py] = [at.xMm - first.xMm, at.yMm - first.yMm];
  const a = (px * dx + py * dy) / spacing ** 2;
  const b = (py * dx - px * dy) / spacing ** 2;
  const [trace, area] = [1 + b ** 2 + (1 - a) ** 2, Math.abs(1 - a)];
  return {
    first: Math.sqrt((trace + Math.sqrt(Math.max(0, trace ** 2 - 4 * area ** 2))) / 2),
    second: Math.hypot(a, b),
  };
}

/**
 * How far a hole may lie off along the line and a diamond pin still goes in: (−w + √(w² + D² − d²))/2, w the width of its land,
 * D the hole, d the pin across the land; nothing where the pin is the larger.
 */
export const absorbedByDiamond = (land: number, hole: number, pin: number): number =>
  pin >= hole ? 0 : (Math.sqrt(land ** 2 + hole ** 2 - pin ** 2) - land) / 2;
