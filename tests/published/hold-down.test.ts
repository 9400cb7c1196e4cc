import { expect, test } from 'vitest';
import { holdForce, LEAST_HOLD_FACTOR, STANDARD_AIR_PA } from '../../src/reference/hold-down.ts';
import { formatNumber } from '../../src/units/format.ts';
import { unitById } from '../../src/units/unit.ts';
import { row } from './rows.ts';

test('force of a vacuum is pressure difference times area', () => {
  const inches = row('vac.a');
  const { inHg, A_m2: area } = inches.inputs as { inHg: number; A_m2: number };
  expect(holdForce(unitById('inHg').toBase(inHg), area), inches.source).toBeCloseTo(Number(inches.expected), 2);
  const metric = row('vac.b');
  const { dp_kPa: kPa, A_m2: other } = metric.inputs as { dp_kPa: number; A_m2: number };
  expect(holdForce(unitById('kPa').toBase(kPa), other), metric.source).toBeCloseTo(Number(metric.expected), 9);
});

test('the same in pounds: 24 inHg on 0.1 m² is 1827.1 lbf, at 11.79 psi', () => {
  // Recomputed from the conventional inch of mercury, 3386.389 Pa, and the exact pound-force, 4.448 221 615 260 5 N.
  const difference = unitById('inHg').toBase(24);
  expect(formatNumber(holdForce(difference, 0.1), 'lbf', 1)).toBe('1827.1');
  expect(formatNumber(difference, 'psi', 2)).toBe('11.79');
});

test('no more than the air outside has: the standard atmosphere is 29.92 inHg', () => {
  // 760 mm of mercury, by definition of the unit, over 25.4 mm an inch: 29.9213.
  expect(STANDARD_AIR_PA / unitById('inHg').toBase(1)).toBeCloseTo(760 / 25.4, 3);
  // Two to four at least; common practice, from memory.
  expect(LEAST_HOLD_FACTOR).toBe(2);
});
