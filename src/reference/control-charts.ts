/**
 * Constants of control charts for means and ranges of samples of 2 to 7 readings. As printed, to three decimals, in the
 * tables of factors of textbooks on quality control; their home is ASTM E2587 and the NIST/SEMATECH e-Handbook, 6.3.2
 * (from memory). Exact integration gives D4 2.575 for three and 2.115 for five: the printed ones are used.
 */
import type { Certainty } from './certainty.ts';

export interface ChartFactors {
  /** Limits of means lie a2 · mean range on either side. */
  readonly a2: number;
  /** Lower and upper limit of ranges, times the mean range. */
  readonly d3Lower: number;
  readonly d4Upper: number;
  /** Mean range of a sample in standard deviations, and the standard deviation of that range. */
  readonly d2: number;
  readonly d3: number;
}

export const CHART_CERTAINTY: Certainty = 'seen+recomputed';

/** By the number of readings in a sample. */
export const chartFactors: Readonly<Record<number, ChartFactors>> = {
  2: { a2: 1.88, d3Lower: 0, d4Upper: 3.267, d2: 1.128, d3: 0.853 },
  3: { a2: 1.023, d3Lower: 0, d4Upper: 2.574, d2: 1.693, d3: 0.888 },
  4: { a2: 0.729, d3Lower: 0, d4Upper: 2.282, d2: 2.059, d3: 0.88 },
  5: { a2: 0.577, d3Lower: 0, d4Upper: 2.114, d2: 2.326, d3: 0.864 },
  6: { a2: 0.483, d3Lower: 0, d4Upper: 2.004, d2: 2.534, d3: 0.848 },
  7: { a2: 0.419, d3Lower: 0.076, d4Upper: 1.924, d2: 2.704, d3: 0.833 },
};
