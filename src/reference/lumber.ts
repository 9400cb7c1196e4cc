/**
 * Standard thicknesses of hardwood lumber, rough and surfaced on two sides.
 * Source: NHLA practice as quoted by three trade pages that agree; 10/4 surfaced from memory. Grading thicknesses: what is
 * really delivered is the supplier's word.
 */
import type { Certainty } from './certainty.ts';

export const LUMBER_SOURCE = 'NHLA standard thicknesses, as quoted by trade pages';

export interface LumberSize {
  /** As the trade says it. */
  readonly name: string;
  readonly roughIn: number;
  readonly surfacedIn: number;
  readonly certainty: Certainty;
}

const size = (
  name: string,
  roughIn: number,
  surfacedIn: number,
  certainty: Certainty = 'seen+recomputed',
): LumberSize => ({ name, roughIn, surfacedIn, certainty });

/** Thinnest first. */
export const lumberSizes: readonly LumberSize[] = [
  size('3/8', 3 / 8, 3 / 16),
  size('1/2', 1 / 2, 5 / 16),
  size('5/8', 5 / 8, 7 / 16),
  size('3/4', 3 / 4, 9 / 16),
  size('4/4', 1, 13 / 16),
  size('5/4', 5 / 4, 17 / 16),
  size('6/4', 6 / 4, 21 / 16),
  size('7/4', 7 / 4, 3 / 2),
  size('8/4', 2, 7 / 4),
  size('10/4', 5 / 2, 9 / 4, 'memory'),
  size('12/4', 3, 11 / 4),
  size('14/4', 7 / 2, 13 / 4),
  size('16/4', 4, 15 / 4),
];

const INCH_NM = 25_400_000;

/** The thinnest size that is at least so thick, rough or surfaced; none where lumber is not made so thick. Nanometres. */
export const thinnestAtLeast = (neededNm: number, as: 'roughIn' | 'surfacedIn'): LumberSize | undefined =>
  lumberSizes.find((one) => one[as] * INCH_NM >= neededNm);
