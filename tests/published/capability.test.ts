/** Capability and control charts: published rows, and what a long run of chance comes to. */
import { describe, expect, test } from 'vitest';
import { capabilityOf, chartsOf, spreadOf } from '../../src/derive/capability.ts';
import { chartFactors } from '../../src/reference/control-charts.ts';
import { normal, seeded } from '../faults/seeded.ts';
import { row, rowsOfItem } from './rows.ts';

const rows = rowsOfItem(11);
const isChart = ({ id }: { id: string }): boolean => id.startsWith('spc.');
const isCapability = ({ id }: { id: string }): boolean => id.startsWith('cp.');

test('every row of the item is checked: here, and the stack in derived.test.ts', () => {
  expect(rows.filter((one) => !isChart(one) && !isCapability(one)).map(({ id }) => id)).toEqual(['rss.a']);
  expect(rows.filter(isChart).length + rows.filter(isCapability).length).toBe(rows.length - 1);
});

test.each(rows.filter(isCapability).map(({ id }) => id))('%s: Cp and Cpk', (id) => {
  const { inputs, expected, tolerance } = row(id);
  const { L, U, m, s } = inputs as Record<'L' | 'U' | 'm' | 's', number>;
  const [cp, cpk] = expected as [number, number];
  const found = capabilityOf({ low: L, high: U }, { mean: m, deviation: s })!;
  expect(Math.abs(found.cp - cp)).toBeLessThanOrEqual(Number(tolerance));
  expect(Math.abs(found.cpk - cpk)).toBeLessThanOrEqual(Number(tolerance));
});

test.each(rows.filter(isChart).map(({ id }) => id))('%s: factors of charts', (id) => {
  const { inputs, expected, tolerance } = row(id);
  const { a2, d3Lower, d4Upper, d2, d3 } = chartFactors[Number(inputs['n'])]!;
  const found = [a2, d3Lower, d4Upper, d2, d3];
  for (const [i, value] of (expected as number[]).entries())
    expect(Math.abs(found[i]! - value)).toBeLessThanOrEqual(Number(tolerance));
});

test.each(Object.entries(chartFactors))('%s in a sample: A2, D3 and D4 follow from d2 and d3', (n, factors) => {
  const { a2, d3Lower, d4Upper, d2, d3 } = factors;
  // Each is printed to three decimals: half a digit of its own, and what d2 and d3 are off by.
  expect(Math.abs(a2 - 3 / (d2 * Math.sqrt(Number(n))))).toBeLessThan(0.0015);
  expect(Math.abs(d3Lower - Math.max(0, 1 - (3 * d3) / d2))).toBeLessThan(0.0025);
  expect(Math.abs(d4Upper - (1 + (3 * d3) / d2))).toBeLessThan(0.0025);
});

describe('a long run of chance', () => {
  const [mean, deviation] = [44.26, 0.04];
  const samplesOf = (size: number, count: number, seed: number): number[][] => {
    const chance = seeded(seed);
    return Array.from({ length: count }, () => Array.from({ length: size }, () => normal(chance, mean, deviation)));
  };

  test('gives its mean, spread and capability back', () => {
    const spread = spreadOf(samplesOf(1, 100_000, 11).flat())!;
    // Four standard errors.
    expect(Math.abs(spread.mean - mean)).toBeLessThan((4 * deviation) / Math.sqrt(100_000));
    expect(Math.abs(spread.deviation - deviation)).toBeLessThan((4 * deviation) / Math.sqrt(200_000));
    const { cp, cpk } = capabilityOf({ low: 44.07, high: 44.45 }, spread)!;
    expect(cp).toBeCloseTo(0.38 / 0.24, 1);
    expect(cpk).toBeCloseTo(0.19 / 0.12, 1);
  });

  test.each([2, 3, 4, 5, 6, 7])('samples of %i: d2 and d3 are those of the table', (size) => {
    const count = 60_000;
    const ranges = samplesOf(size, count, size).map(
      (sample) => (Math.max(...sample) - Math.min(...sample)) / deviation,
    );
    const { mean: d2, deviation: d3 } = spreadOf(ranges)!;
    const factors = chartFactors[size]!;
    expect(Math.abs(d2 - factors.d2)).toBeLessThan(0.0005 + (4 * factors.d3) / Math.sqrt(count));
    expect(Math.abs(d3 - factors.d3)).toBeLessThan(0.012);
  });

  test('charts of a station at rest: few samples lie outside, of one that drifts many', () => {
    const calm = samplesOf(5, 2000, 5);
    const charts = chartsOf(calm)!;
    expect(Math.abs(charts.deviation - deviation)).toBeLessThan(0.001);
    // Three sigma of means: 0.27 %; ranges somewhat more.
    expect(charts.out.filter(({ by }) => by === 'mean').length).toBeLessThan(15);
    expect(charts.out.filter(({ by }) => by === 'range').length).toBeLessThan(25);
    const drifting = calm.map((sample, i) => sample.map((one) => one + (i < 1000 ? 0 : 0.08)));
    const drift = chartsOf(drifting)!;
    expect(drift.out.filter(({ by }) => by === 'mean').length).toBeGreaterThan(200);
    // The spread within samples does not know of it, the spread of all does.
    expect(drift.deviation).toBeCloseTo(charts.deviation, 9);
    expect(spreadOf(drifting.flat())!.deviation).toBeGreaterThan(1.3 * drift.deviation);
  });
});

describe('what cannot be said is not', () => {
  test('charts by hand: two samples of two', () => {
    const charts = chartsOf([
      [10, 12],
      [11, 12],
    ])!;
    expect(charts.means).toEqual({ low: 11.25 - 1.88 * 1.5, centre: 11.25, high: 11.25 + 1.88 * 1.5 });
    expect(charts.ranges).toEqual({ low: 0, centre: 1.5, high: 3.267 * 1.5 });
    expect(charts.out).toEqual([]);
  });

  test('one reading has no spread, alike readings no capability', () => {
    expect(spreadOf([44.2])).toBeUndefined();
    expect(spreadOf([])).toBeUndefined();
    expect(capabilityOf({ low: 44, high: 45 }, spreadOf([44.2, 44.2, 44.2])!)).toBeUndefined();
  });

  test('a mean outside the limits is below nought', () => {
    expect(capabilityOf({ low: 44, high: 45 }, { mean: 45.1, deviation: 0.1 })!.cpk).toBeLessThan(0);
  });

  test('no charts of one sample, of unlike ones, of sizes without factors', () => {
    expect(chartsOf([[1, 2]])).toBeUndefined();
    expect(chartsOf([])).toBeUndefined();
    expect(
      chartsOf([
        [1, 2],
        [1, 2, 3],
      ]),
    ).toBeUndefined();
    expect(chartsOf([[1], [2]])).toBeUndefined();
    const eight = [1, 2, 3, 4, 5, 6, 7, 8];
    expect(chartsOf([eight, eight])).toBeUndefined();
  });
});
