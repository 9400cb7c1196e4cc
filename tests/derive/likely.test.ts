/**
 * What is likely of a stack, against bodies drawn by chance and counted with a general library of statistics. The drawn
 * bodies know the causes and their distributions, not the formula.
 */
import { mean, sampleStandardDeviation } from 'simple-statistics';
import { describe, expect, test } from 'vitest';
import { derive } from '../../src/derive/derive.ts';
import { byCapability } from '../../src/derive/rules/likely.ts';
import { Leaf } from '../../src/facts/leaf.ts';
import type { Readings } from '../../src/facts/readings.ts';
import type { Subject } from '../../src/facts/subject.ts';
import type { Cause } from '../../src/units/quantity.ts';
import { normal, seeded } from '../faults/seeded.ts';
import { MM, sampleSubject, valueOf } from './subject.ts';

const base = sampleSubject();

/** The sample with these readings, in millimetres, and no others. */
function measured(readings: Readonly<Record<string, readonly number[]>>): Subject {
  const leaves = Object.entries(readings).map(([fact, values]) => {
    const value: Readings = {
      fact,
      station: 'machining-top',
      reads: 'length',
      unit: 'mm',
      fineness: 3,
      values: values.map((one) => one * MM),
      samples: [],
      from: '2026-09-01',
      to: '2026-09-30',
    };
    const place = { file: 'readings.csv', start: 0, end: 0 };
    return [fact, new Leaf(`readings.${fact}`, '', { kind: 'measured', place }, value)] as const;
  });
  return { ...base, readings: new Map(leaves) };
}

const draw = (count: number, centre: number, deviation: number, seed: number): number[] => {
  const chance = seeded(seed);
  return Array.from({ length: count }, () => normal(chance, centre, deviation));
};

const ERROR = 'plant.machines.router.depth-error';

describe('the depth of a pickup under the cap face: ±0.10 of the faced back and ±0.08 of the router', () => {
  const of = (subject: Subject) => valueOf(derive(subject), 'likely.cavity.bridge-pickup');

  test('nothing measured: centred, and its limits three standard deviations away', () => {
    const { required, worst, rootSumSquare, mean: centre, deviation, measured: by } = of(measured({}));
    expect(by).toEqual([]);
    expect(centre.value).toBe(required.value);
    expect((worst.high! - worst.value) / MM).toBeCloseTo(0.18, 9);
    // √(0.10² + 0.08²), and a third of it.
    expect(rootSumSquare.value / MM).toBeCloseTo(0.1280625, 6);
    expect(deviation.value / MM).toBeCloseTo(0.1280625 / 3, 6);
  });

  test.each([
    [0.02, 0.03, 0.015, 41],
    [-0.03, 0.02, 0.04, 42],
    [0, 0.01, 0.01, 43],
  ])('measured: as bodies drawn from the same stations (off by %d, %d and %d)', (off, back, router, seed) => {
    const backs = draw(4000, 50.3 + off, back, seed);
    const errors = draw(4000, -off / 2, router, seed + 100);
    const found = of(measured({ 'thickness.body.back-faced': backs, [ERROR]: errors }));
    expect(found.measured.toSorted()).toEqual([ERROR, 'thickness.body.back-faced']);
    // Fresh bodies: the pickup's depth is the cap face over the floor, the faced back under both.
    const count = 40_000;
    const chance = seeded(seed + 200);
    const bodies = Array.from({ length: count }, () => {
      const thickness = normal(chance, 50.3 + off, back);
      const floor = 50.3 - found.required.value / MM + normal(chance, -off / 2, router);
      return thickness - floor;
    });
    const spread = sampleStandardDeviation(bodies);
    // Four standard errors of both, of the readings and of the bodies.
    expect(Math.abs(found.mean.value / MM - mean(bodies))).toBeLessThan(4 * spread * (1 / 200 + 1 / 63));
    expect(Math.abs(found.deviation.value / MM / spread - 1)).toBeLessThan(4 * (1 / 283 + 1 / 89));
    const room = Math.min(found.required.high! - found.mean.value, found.mean.value - found.required.low!);
    expect(found.cpk!.value).toBeCloseTo(room / (3 * found.deviation.value), 9);
  });

  test('a reading of the cut itself comes before the plant’s error', () => {
    const cut = draw(100, 30.3, 0.01, 7);
    const { measured: by } = of(measured({ [ERROR]: draw(100, 0, 0.03, 8), 'cavity.bridge-pickup.measured': cut }));
    expect(by).toContain('cavity.bridge-pickup.measured');
    expect(by).not.toContain(ERROR);
  });

  test('too few readings are not believed', () => {
    expect(of(measured({ [ERROR]: draw(24, 0, 0.01, 9) })).measured).toEqual([]);
    expect(of(measured({ [ERROR]: draw(25, 0, 0.01, 9) })).measured).toEqual([ERROR]);
  });
});

describe('causes', () => {
  const cause = (id: string, sensitivity: number): Cause => ({ cause: id, sensitivity, minus: -30, plus: 30 });
  const reading = (fact: string, causes: readonly Cause[], deviation: number, shift = 0) => ({
    fact,
    causes,
    deviation,
    count: 100,
    nominal: 0,
    mean: shift,
  });

  test('two occasions of one error are two draws of it, not twice one', () => {
    const sum = [cause('m#one', 1), cause('m#two', 1)];
    expect(byCapability(sum, [reading('m', [cause('m', 1)], 5)]).deviation).toBeCloseTo(Math.sqrt(50), 9);
  });

  test('a cause met twice with the same sign counts double, and a shift with it', () => {
    const found = byCapability([cause('m', 2)], [reading('m', [cause('m', 1)], 5, 3)]);
    expect(found).toMatchObject({ deviation: 10, mean: 6 });
  });

  test('what was read with something in it that is not in the sum stands for nothing', () => {
    const found = byCapability([cause('a', 1)], [reading('both', [cause('a', 1), cause('b', 1)], 1)]);
    expect(found).toEqual({ mean: 0, deviation: 10, measured: [] });
  });

  test('what held two causes stands for both at once, where they enter alike', () => {
    const both = reading('both', [cause('a', 1), cause('b', -1)], 4);
    expect(byCapability([cause('a', 1), cause('b', -1)], [both]).deviation).toBe(4);
    expect(byCapability([cause('a', -1), cause('b', 1)], [both]).deviation).toBe(4);
    expect(byCapability([cause('a', 1), cause('b', 1)], [both]).measured).toEqual([]);
  });
});
