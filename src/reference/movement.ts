/**
 * How far wood moves as its moisture changes, across the grain: along the rays (radial) and along the rings (tangential).
 *
 * `coefficient`: change of size for each 1 % of moisture, as a share of the size at 10 %, good from 6 to 14 % (USDA Wood
 * Handbook, FPL-GTR-190 (2010), equation 13-2 and table 13-5). `shrinkage`: from green to ovendry in per cent of the green
 * size (tables 4-3 and 4-4). One follows from the other at 10 % moisture: C = S / (3000 − 20·S).
 *
 * Where the two tables do not agree, both values stand here and the larger movement is used: too much is allowed for rather
 * than too little. Such a row is unverified until the plant puts its own in its place.
 */
import type { Certainty } from './certainty.ts';

export type Way = 'radial' | 'tangential';

export interface Movement {
  readonly shrinkage: number;
  readonly coefficient: number;
  readonly certainty: Certainty;
}

export const COEFFICIENT_SOURCE = 'USDA Wood Handbook, FPL-GTR-190 (2010), table 13-5';
export const SHRINKAGE_SOURCE = 'USDA Wood Handbook, FPL-GTR-190 (2010), tables 4-3 and 4-4';

const row = (
  certainty: Certainty,
  radial: readonly [shrinkage: number, coefficient: number],
  tangential: readonly [shrinkage: number, coefficient: number],
): Readonly<Record<Way, Movement>> => ({
  radial: { shrinkage: radial[0], coefficient: radial[1], certainty },
  tangential: { shrinkage: tangential[0], coefficient: tangential[1], certainty },
});

export const movements: Readonly<Record<string, Readonly<Record<Way, Movement>>>> = {
  'sugar-maple': row('seen', [4.8, 0.00165], [9.9, 0.00353]),
  'red-maple': row('seen', [4.0, 0.00137], [8.2, 0.00289]),
  'bigleaf-maple': row('seen', [3.7, 0.00126], [7.1, 0.00248]),
  'black-walnut': row('seen', [5.5, 0.0019], [7.8, 0.00274]),
  'white-ash': row('seen', [4.9, 0.00169], [7.8, 0.00274]),
  'red-alder': row('seen', [4.4, 0.00151], [7.3, 0.00256]),
  basswood: row('seen', [6.6, 0.0023], [9.3, 0.0033]),
  'black-cherry': row('seen', [3.7, 0.00126], [7.1, 0.00248]),
  'yellow-poplar': row('memory+recomputed', [4.6, 0.00158], [8.2, 0.00289]),
  'sitka-spruce': row('memory+recomputed', [4.3, 0.00148], [7.5, 0.00263]),
  'white-fir': row('seen+recomputed', [3.3, 0.00112], [7.0, 0.00245]),
  // The coefficients, from memory, are not those that follow from the shrinkages, which were read.
  'true-mahogany': row('unverified', [3.0, 0.00172], [4.1, 0.00238]),
  'african-mahogany': row('unverified', [2.5, 0.00141], [4.5, 0.00201]),
  limba: row('unverified', [4.5, 0.00151], [6.2, 0.00187]),
};

/** The coefficient that follows from a shrinkage in per cent: equation 13-3 at 10 % moisture. */
export const coefficientOf = (shrinkagePercent: number): number => shrinkagePercent / (3000 - 20 * shrinkagePercent);

/** The shrinkage, per cent, that follows from a coefficient. */
export const shrinkageOf = (coefficient: number): number => (3000 * coefficient) / (1 + 20 * coefficient);

/** Rounding of the last printed figure of either table. */
const ROUNDING = 6e-6;

/** Whether the two tables say the same of a row, within their rounding. */
export const agrees = ({ shrinkage, coefficient }: Movement): boolean =>
  Math.abs(coefficientOf(shrinkage) - coefficient) <= ROUNDING;

/** Of two sources that do not agree the one by which wood moves more. */
export const coefficientUsed = (one: Movement): number =>
  agrees(one) ? one.coefficient : Math.max(one.coefficient, coefficientOf(one.shrinkage));
export const shrinkageUsed = (one: Movement): number =>
  agrees(one) ? one.shrinkage : Math.max(one.shrinkage, shrinkageOf(one.coefficient));

const LOW = 0.06;
const HIGH = 0.14;
const FIBRE_SATURATION = 0.3;

export interface Change {
  /** Size across the grain at the moisture it starts from, any unit. */
  readonly size: number;
  readonly coefficient: number;
  /** Per cent. */
  readonly shrinkage: number;
  /** Moisture contents, shares of 1, neither above 30 %. */
  readonly from: number;
  readonly to: number;
}

/** Change of size by equation 13-2: size · C · ΔM; for 6 to 14 % moisture. Unit of the size. */
export const changeNear10 = ({ size, coefficient, from, to }: Change): number => size * coefficient * (to - from) * 100;

/** Change of size by equation 13-3: size · ΔM / (30·100/S − 30 + M), up to 30 % moisture. Unit of the size. */
export const changeWide = ({ size, shrinkage, from, to }: Change): number =>
  (size * (to - from) * 100) / (3000 / shrinkage - 30 + from * 100);

/** Change of size: equation 13-2 where both moistures lie between 6 and 14 %, 13-3 beyond; wood above 30 % does not move. */
export function changeOfSize(change: Change): number {
  const within = (m: number): boolean => m >= LOW && m <= HIGH;
  if (within(change.from) && within(change.to)) return changeNear10(change);
  const capped = (m: number): number => Math.min(m, FIBRE_SATURATION);
  return changeWide({ ...change, from: capped(change.from), to: capped(change.to) });
}
