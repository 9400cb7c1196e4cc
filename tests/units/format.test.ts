import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  formatFraction,
  formatLimits,
  formatMass,
  formatNumber,
  formatPlain,
  formatQuantity,
  formatSecond,
} from '../../src/units/format.ts';
import { parseQuantity } from '../../src/units/parse.ts';
import type { Kind, Quantity } from '../../src/units/quantity.ts';
import { secondUnit, systemOf } from '../../src/units/second.ts';
import { UNITS } from '../../src/units/unit.ts';
import { authoredLength } from './authored.ts';

const MM = 1e6;
const THOU = 25_400;

function read(text: string, kind: Kind = 'length'): Quantity {
  const parsed = parseQuantity(text, { kind });
  if (!parsed.ok) throw new Error(`${text}: ${parsed.problem.text}`);
  return parsed.quantity;
}

test.each([
  ['17.50 mm ±0.1', '17.50 ±0.10 mm'],
  ['17.5 mm ±0.05', '17.5 ±0.05 mm'],
  ['17.5 mm -0/+0.3', '17.5 +0.3/-0.0 mm'],
  ['17.4 .. 17.60 mm', '17.40..17.60 mm'],
  ['1 3/4"', '1-3/4 in'],
  ['2" ±1/64', '2 ±1/64 in'],
  ['1.750 in ±1/64', '1.750 ±0.015625 in'],
  ['-0.20 um', '-0.20 µm'],
])('authored form of %s is %s', (text, expected) => expect(formatQuantity(read(text))).toBe(expected));

test('an angle has no blank before its sign, a count no unit', () => {
  expect(formatQuantity(read('5 ±0.5 deg', 'angle'))).toBe('5 ±0.5°');
  expect(formatQuantity(read('12', 'count'))).toBe('12');
});

describe('derived values without an exact decimal', () => {
  const derived: Quantity = {
    kind: 'length',
    unit: 'in',
    decimals: 3,
    value: 25_400_001,
    low: 25_399_999,
    high: 25_410_003,
  };
  test('get two decimals more, limits inward', () => {
    expect(formatQuantity({ ...derived, form: 'range' })).toBe('1.000..1.00039 in');
  });
  test('limits closer than the last decimal get more decimals', () => {
    const close = { ...derived, form: 'range' as const, low: 25_410_001, high: 25_410_003 };
    const [low = NaN, high = NaN] = formatQuantity(close).replace(' in', '').split('..').map(Number);
    expect(low <= high).toBe(true);
    expect(low * 25.4e6).toBeGreaterThanOrEqual(25_410_000.999);
  });
  test('the noise of doubles is not printed', () => {
    expect(formatQuantity({ kind: 'length', unit: 'mm', decimals: 1, value: 17_500_000.000004 })).toBe('17.5 mm');
  });
  test('one limit alone is not lost', () => {
    expect(formatQuantity({ kind: 'length', unit: 'mm', decimals: 1, value: 3 * MM, low: 2.5 * MM })).toBe(
      '3.0 (≥ 2.5) mm',
    );
  });
});

test('numbers: ties away from zero, no sign on zero, mark and leading zero as asked', () => {
  expect(formatNumber(1_005_000, 'mm', 2)).toBe('1.01');
  expect(formatNumber(-1_005_000, 'mm', 2)).toBe('-1.01');
  expect(formatNumber(-1000, 'mm', 2)).toBe('0.00');
  expect(formatNumber(0.45, '%', 0)).toBe('45');
  expect(formatNumber(12_500_000, 'mm', 1, { decimalMark: ',' })).toBe('12,5');
  expect(formatNumber(-THOU, 'in', 3, { leadingZero: false })).toBe('-.001');
  expect(() => formatNumber(NaN, 'mm', 1)).toThrow(RangeError);
});

describe('limits for a gauge', () => {
  test('come with the target and the count of readings', () => {
    expect(formatLimits(read('11 ±0.3 mm'), { unit: 'in', step: THOU })).toMatchObject({
      low: '.422',
      high: '.444',
      target: '.433',
      counts: 23,
    });
    expect(formatLimits(read('0.5 ±0.1 mm'), { unit: 'mm', step: 50_000 })).toMatchObject({
      low: '0.40',
      high: '0.60',
      counts: 5,
    });
  });
  test('the target stays inside', () => {
    expect(formatLimits(read('17.58 mm +0.1/-0'), { unit: 'mm', step: 0.05 * MM })).toMatchObject({
      low: '17.60',
      high: '17.65',
      target: '17.60',
    });
  });
  test('say why there are none', () => {
    const gauge = { unit: 'mm', step: 0.1 * MM };
    expect(formatLimits(read('17.55 ±0.02 mm'), gauge)).toMatchObject({ ok: false, reason: 'no-reading' });
    expect(formatLimits(read('17.5 mm'), gauge)).toMatchObject({ ok: false, reason: 'no-limits' });
    expect(formatLimits(read('17.5 ±1 mm'), { unit: 'in', step: 0.1 * MM })).toMatchObject({
      reason: 'step-not-decimal',
    });
  });
  test('a thermometer is read from its own zero', () => {
    const c = formatLimits(read('21 ±2 °C', 'temperature'), { unit: '°C', step: 0.5 });
    expect(c).toMatchObject({ low: '19.0', high: '23.0', target: '21.0', counts: 9 });
    expect(c.ok && formatSecond(c, { unit: '°F', step: 5 / 9 })).toMatchObject({ low: '67', high: '73', target: '70' });
  });
  test('other kinds', () => {
    expect(formatLimits(read('6.0 ±0.5 %', 'fraction'), { unit: '%', step: 0.001 })).toMatchObject({
      low: '5.5',
      high: '6.5',
      counts: 11,
    });
    const kPa = formatLimits(read('700 ±70 kPa', 'pressure'), { unit: 'kPa', step: 10_000 });
    expect(kPa.ok && formatSecond(kPa, { unit: 'psi', step: 6894.757293168361 })).toMatchObject({
      low: '92',
      high: '111',
    });
  });
});

test('printed limits lie inside the true ones, and second-unit limits inside the first as printed', () => {
  const gauges = fc.constantFrom(
    [
      { unit: 'mm', step: 0.01 * MM },
      { unit: 'in', step: THOU },
    ] as const,
    [
      { unit: 'mm', step: 0.1 * MM },
      { unit: 'in', step: THOU / 2 },
    ] as const,
    [
      { unit: 'in', step: THOU },
      { unit: 'mm', step: 0.01 * MM },
    ] as const,
    [
      { unit: 'µm', step: 1000 },
      { unit: 'thou', step: THOU / 10 },
    ] as const,
  );
  let printedBoth = 0;
  fc.assert(
    fc.property(authoredLength, gauges, ({ text }, [gauge, second]) => {
      const q = read(text);
      const first = formatLimits(q, gauge);
      if (!first.ok) return;
      const nm = (number: string, unit: string) => read(`${number} ${unit}`).value;
      expect(nm(first.low, first.unit)).toBeGreaterThanOrEqual(q.low!);
      expect(nm(first.high, first.unit)).toBeLessThanOrEqual(q.high!);
      expect([first.lowBase, first.highBase]).toEqual([nm(first.low, first.unit), nm(first.high, first.unit)]);
      const again = formatSecond(first, second);
      if (!again.ok) return;
      printedBoth += 1;
      expect(nm(again.low, again.unit)).toBeGreaterThanOrEqual(first.lowBase);
      expect(nm(again.high, again.unit)).toBeLessThanOrEqual(first.highBase);
      expect(nm(again.target, again.unit)).toBeGreaterThanOrEqual(nm(again.low, again.unit));
      expect(nm(again.target, again.unit)).toBeLessThanOrEqual(nm(again.high, again.unit));
    }),
    { numRuns: 500 },
  );
  expect(printedBoth).toBeGreaterThan(50);
});

test('mass in kg and in pounds and ounces', () => {
  expect(formatMass(2.31)).toEqual({ kg: '2.31', lbOz: '5 lb 1 oz' });
  expect(formatMass(0.45359237 * 0.999)).toEqual({ kg: '0.45', lbOz: '1 lb 0 oz' });
});

test('a plain value keeps as many digits as its original bears', () => {
  expect(formatPlain(read('25 mm'), 'in')).toBe('0.98 in');
  expect(formatPlain(read('12.50 mm'), 'in')).toBe('0.4921 in');
  expect(formatPlain(read('1200 mm'), 'm')).toBe('1.200 m');
  expect(formatPlain(read('12.50 mm'))).toBe('12.50 mm');
  expect(formatPlain(read('12.50 mm'), 'in', 2)).toBe('0.49 in');
});

test('fractions', () => {
  expect(formatFraction(0, 64)).toEqual({ text: '0', residualNm: 0 });
  expect(formatFraction(-44 * MM, 64).text).toBe('-1 47/64');
  expect(formatFraction(25_400_000, 16).text).toBe('1');
  expect(() => formatFraction(1, 3)).toThrow(RangeError);
});

test('second units lead to the other system and are of the same kind', () => {
  for (const unit of UNITS) {
    const second = secondUnit(unit.id);
    if (second === undefined) continue;
    expect(UNITS.find((u) => u.id === second)?.kind).toBe(unit.kind);
    expect([systemOf(unit.id), systemOf(second)].toSorted()).toEqual(['inch', 'metric']);
  }
  for (const id of ['deg', '%', 'rpm', 's', 'min', 'h', '']) expect(secondUnit(id)).toBeUndefined();
});
