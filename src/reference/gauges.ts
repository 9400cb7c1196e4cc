/**
 * What a gauge must be able to do for the limits it is read against, by its class. Two tests, apart from each other: how
 * fine it reads, and how far a reading may be off.
 *
 * Resolution no more than a tenth of the total tolerance: the ten-to-one guideline, attributed to ASME B89.7.3.1-2001
 * (worked: 20 ±0.05 mm takes 0.01 mm).
 * Tolerance ÷ (2 · U95) no less than four: test uncertainty ratio as ANSI/NCSLI Z540.3:2006 defines it; four to one as
 * MIL-STD-45662A and ANSI/NCSL Z540-1 ask. Both meant for gauges of lengths and scales.
 * What is asked of the other classes: common practice, no source.
 */
import type { Certainty } from './certainty.ts';

export const gaugeClasses = ['measure', 'rule', 'meter', 'pressure', 'timer', 'scale', 'go-no-go'] as const;
export type GaugeClass = (typeof gaugeClasses)[number];

export interface GaugeRule {
  /** What gauges of the class are called. */
  readonly called: string;
  /** Its step is no more than the total tolerance divided by this. */
  readonly steps?: number;
  /** Fewer readings than this inside the limits, both ends included, and it says nothing about a piece. */
  readonly leastCounts?: number;
  /** Total tolerance ÷ (2 · U95) is no less than this. */
  readonly ratio?: number;
  readonly certainty: Certainty;
}

/** Nothing is asked of the step or the ratio of a go/no-go: it is made to the limits, and has neither. */
export const gaugeRules: Readonly<Record<GaugeClass, GaugeRule>> = {
  measure: { called: 'a measuring gauge', steps: 10, leastCounts: 4, ratio: 4, certainty: 'seen' },
  scale: { called: 'a scale', steps: 10, leastCounts: 4, ratio: 4, certainty: 'memory' },
  // Read by eye between two marks: its error is its step, and half the tolerance is what a mark can tell.
  rule: { called: 'a tape or a rule', steps: 2, leastCounts: 2, certainty: 'unverified' },
  // No meter of wood or air is four times better than what is asked of a store: a reading must still prove something.
  meter: { called: 'a meter', steps: 4, leastCounts: 4, certainty: 'unverified' },
  // Besides, it is read in the middle half of its scale: of the press, that has a check of its own.
  pressure: { called: 'a pressure gauge', steps: 4, leastCounts: 4, certainty: 'unverified' },
  timer: { called: 'a clock', steps: 4, leastCounts: 4, certainty: 'unverified' },
  'go-no-go': { called: 'a go/no-go', certainty: 'unverified' },
};
