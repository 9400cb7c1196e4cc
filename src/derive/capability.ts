/**
 * What a station holds, from readings of it: spread, capability against limits, and control limits of means and ranges.
 * Pure: numbers in one unit go in, numbers of that unit come out; ratios have none.
 */
import type { ChartFactors } from '../reference/control-charts.ts';
import { chartFactors } from '../reference/control-charts.ts';

export interface Spread {
  readonly count: number;
  readonly mean: number;
  /** Standard deviation, the sum of squares divided by count − 1: of everything that varied while these were taken. */
  readonly deviation: number;
}

/** Of two readings or more; undefined of fewer, which have no spread. */
export function spreadOf(readings: readonly number[]): Spread | undefined {
  const count = readings.length;
  if (count < 2) return undefined;
  // Alike to the last digit: the sum of doubles would find a spread where there is none.
  if (readings.every((one) => one === readings[0])) return { count, mean: readings[0]!, deviation: 0 };
  const mean = meanOf(readings);
  const squares = readings.reduce((sum, one) => sum + (one - mean) ** 2, 0);
  return { count, mean, deviation: Math.sqrt(squares / (count - 1)) };
}

export interface Capability {
  /** Width of the limits ÷ six standard deviations: what the station could hold if it were centred. */
  readonly cp: number;
  /** Distance of the mean to the nearer limit ÷ three standard deviations: what it holds; below nought the mean is out. */
  readonly cpk: number;
}

/**
 * Cp = (U − L) / 6σ, Cpk = min(U − μ, μ − L) / 3σ. Undefined where nothing varied: readings that are all alike say that
 * the gauge is too coarse, not that the station is perfect.
 */
export function capabilityOf(
  limits: { readonly low: number; readonly high: number },
  { mean, deviation }: Pick<Spread, 'mean' | 'deviation'>,
): Capability | undefined {
  if (!(deviation > 0)) return undefined;
  return {
    cp: (limits.high - limits.low) / (6 * deviation),
    cpk: Math.min(limits.high - mean, mean - limits.low) / (3 * deviation),
  };
}

interface Band {
  readonly low: number;
  readonly centre: number;
  readonly high: number;
}

export interface Charts {
  /** Of the means of samples: grand mean ± A2 · mean range. */
  readonly means: Band;
  /** Of the ranges of samples: D3 · mean range, mean range, D4 · mean range. */
  readonly ranges: Band;
  /** Mean range ÷ d2: spread from piece to piece within samples, without the drift between them. */
  readonly deviation: number;
  /** Places, in the order of the samples, whose mean or range lies outside. */
  readonly out: readonly { readonly sample: number; readonly by: 'mean' | 'range' }[];
}

/**
 * Charts of samples taken one after another, all of one size from two to seven. Undefined of fewer than two samples, of
 * samples of unlike size, and of a size that has no printed factors.
 */
export function chartsOf(samples: readonly (readonly number[])[]): Charts | undefined {
  const size = samples[0]?.length ?? 0;
  const factors = chartFactors[size];
  if (!factors || samples.length < 2 || samples.some((sample) => sample.length !== size)) return undefined;
  const means = samples.map((sample) => meanOf(sample));
  const ranges = samples.map((sample) => Math.max(...sample) - Math.min(...sample));
  const bands = bandsOf(meanOf(means), meanOf(ranges), factors);
  const outside = (value: number, { low, high }: Band): boolean => value < low || value > high;
  return {
    ...bands,
    out: samples.flatMap((_, sample) => [
      ...(outside(means[sample]!, bands.means) ? [{ sample, by: 'mean' } as const] : []),
      ...(outside(ranges[sample]!, bands.ranges) ? [{ sample, by: 'range' } as const] : []),
    ]),
  };
}

function bandsOf(mean: number, range: number, { a2, d3Lower, d4Upper, d2 }: ChartFactors): Omit<Charts, 'out'> {
  return {
    means: { low: mean - a2 * range, centre: mean, high: mean + a2 * range },
    ranges: { low: d3Lower * range, centre: range, high: d4Upper * range },
    deviation: range / d2,
  };
}

const meanOf = (numbers: readonly number[]): number => numbers.reduce((sum, one) => sum + one, 0) / numbers.length;
