import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formatQuantity } from '../../src/units/format.ts';
import type { UnitProblem } from '../../src/units/parse.ts';
import { parseQuantity } from '../../src/units/parse.ts';
import type { Kind, Quantity } from '../../src/units/quantity.ts';
import { authored } from './authored.ts';

function read(text: string, kind: Kind = 'length', defaultUnit = 'mm'): Quantity {
  const parsed = parseQuantity(text, { kind, ...(kind === 'length' ? { defaultUnit } : {}) });
  if (!parsed.ok) throw new Error(`${text}: ${parsed.problem.text}`);
  return parsed.quantity;
}

function refused(text: string, kind: Kind = 'length', defaultUnit = 'mm'): UnitProblem {
  const parsed = parseQuantity(text, { kind, ...(defaultUnit === '' ? {} : { defaultUnit }) });
  if (parsed.ok) throw new Error(`${text} was read as ${formatQuantity(parsed.quantity)}`);
  return parsed.problem;
}

const MM = 1e6;

test.each([
  ['12.50', { value: 12.5 * MM, unit: 'mm', decimals: 2 }],
  ['.5 in', { value: 12.7 * MM, unit: 'in', decimals: 1 }],
  ['-0.2', { value: -0.2 * MM, unit: 'mm', decimals: 1 }],
  ['12.345 mm', { value: 12_345_000, unit: 'mm', decimals: 3 }],
  ['1.735 in', { value: 44_069_000, unit: 'in', decimals: 3 }],
  ['3/64"', { value: 1_190_625, unit: 'in', decimals: 6, denominator: 64 }],
  ['1-3/4 in', { value: 44_450_000, unit: 'in', decimals: 2, denominator: 4 }],
  [
    '1/4..3/8 in',
    { value: 7_937_500, low: 6_350_000, high: 9_525_000, unit: 'in', decimals: 3, denominator: 8, form: 'range' },
  ],
  ['1 3/4 in', { value: 44_450_000, unit: 'in', decimals: 2, denominator: 4 }],
  ['1/128 in', { value: 198_437.5, unit: 'in', decimals: 7, denominator: 128 }],
  ['17.50 ±0.1', { value: 17.5 * MM, low: 17.4 * MM, high: 17.6 * MM, unit: 'mm', decimals: 2 }],
  ['17.50 mm ±0.1 mm', { value: 17.5 * MM, low: 17.4 * MM, high: 17.6 * MM, unit: 'mm', decimals: 2 }],
  ['17.50 +/-0.10', { value: 17.5 * MM, low: 17.4 * MM, high: 17.6 * MM, unit: 'mm', decimals: 2 }],
  ['17.50 +-0.10', { value: 17.5 * MM, low: 17.4 * MM, high: 17.6 * MM, unit: 'mm', decimals: 2 }],
  ['17.5 +0.3/-0', { value: 17.5 * MM, low: 17.5 * MM, high: 17.8 * MM, unit: 'mm', decimals: 1, form: 'deviations' }],
  ['17.5 -0/+0.3', { value: 17.5 * MM, low: 17.5 * MM, high: 17.8 * MM, unit: 'mm', decimals: 1, form: 'deviations' }],
  ['17.4 .. 17.7 mm', { value: 17.55 * MM, low: 17.4 * MM, high: 17.7 * MM, unit: 'mm', decimals: 1, form: 'range' }],
  [
    '1-3/4 in ±1/64',
    { value: 44_450_000, low: 44_053_125, high: 44_846_875, unit: 'in', decimals: 2, denominator: 64 },
  ],
] as const)('%s', (text, expected) => {
  expect(read(text)).toEqual({ kind: 'length', ...expected });
});

describe('kinds that need care', () => {
  test('the deviation of a temperature is a difference', () => {
    for (const text of ['21 ±2 °C', '21 °C ±2 Δ°C', '21 °C ±2 K']) {
      expect(read(text, 'temperature')).toMatchObject({ value: 294.15, low: 292.15, high: 296.15 });
    }
    const { value, low, high } = read('70 ±9 °F', 'temperature');
    expect(value).toBeCloseTo(294.261111111111, 10);
    expect((high ?? 0) - (low ?? 0)).toBeCloseTo(10, 10);
  });
  test('a percentage is held as a fraction', () => expect(read('45 %', 'fraction').value).toBe(0.45));
  test('a count has no unit', () => expect(read('3', 'count')).toMatchObject({ value: 3, unit: '' }));
  test('m/min is not min', () => {
    expect(read('6 m/min', 'speed').value).toBe(0.1);
    expect(read('6 min', 'time').value).toBe(360);
  });
});

test.each([
  ['', 'number-unreadable', '', 'mm'],
  ['1,5', 'number-unreadable', '1,5', 'mm'],
  ['1_000', 'number-unreadable', '1_000', 'mm'],
  ['1e3 mm', 'number-unreadable', '1e3', 'mm'],
  ['1e400', 'number-unreadable', '1e400', 'mm'],
  ['0x10', 'number-unreadable', '0x10', 'mm'],
  ['6.', 'number-unreadable', '6.', 'mm'],
  ['6..', 'number-unreadable', '', 'mm'],
  ['1.2.3', 'number-unreadable', '1.2.3', 'mm'],
  ['1...2', 'number-unreadable', '1...', 'mm'],
  ['17.5 18', 'number-unreadable', '18', 'mm'],
  ['17.5 +0.3', 'number-unreadable', '+0.3', 'mm'],
  ['17.5 ±-0.1', 'number-unreadable', '-0.1', 'mm'],
  ['17.5 +0.3/0.1', 'number-unreadable', '+0.3/0.1', 'mm'],
  ['1/64.5 in', 'number-unreadable', '1/64.5', 'mm'],
  ['3 ± 1 ± 2', 'number-unreadable', '± 2', 'mm'],
  ['1/3 in', 'number-unreadable', '1/3', 'mm'],
  ['1/2', 'number-unreadable', '1/2', 'mm'],
  ['NaN', 'number-not-finite', 'NaN', 'mm'],
  ['-.inf mm', 'number-not-finite', '-.inf', 'mm'],
  ['5 ±.inf', 'number-not-finite', '.inf', 'mm'],
  ['99999999999999999999', 'number-too-large', '99999999999999999999', 'mm'],
  ['0.00000012 mm', 'number-too-fine', '0.00000012', 'mm'],
  ['12', 'unit-missing', '', ''],
  ['12 MM', 'unit-unknown', 'MM', 'mm'],
  ['12 kPa', 'unit-wrong-kind', 'kPa', 'mm'],
  ['1.735 in ±5 thou', 'units-mixed', 'thou', 'mm'],
  ['17.6..17.4', 'limits-crossed', '17.6..17.4', 'mm'],
  ['17.5 +0.3/+0.1', 'limits-crossed', '+0.3/+0.1', 'mm'],
] as const)('refuses %j: %s at %j', (text, code, at, defaultUnit) => {
  const problem = refused(text, 'length', defaultUnit);
  expect([problem.code, text.slice(problem.from, problem.to)]).toEqual([code, at]);
  expect(problem.text).not.toBe('');
  expect(problem.mend).not.toBe('');
});

test('the nearest unit is offered, of the wanted kind where two are near', () => {
  expect(refused('12 kpa', 'pressure').mend).toContain('kPa');
  expect(refused('12 mmm').mend).toContain('mm');
  expect(refused('12 °K', 'temperature').mend).toContain('°C');
});

test('a difference is not a temperature', () => {
  expect(refused('2 °C', 'temperature-difference').code).toBe('unit-wrong-kind');
  expect(refused('21 Δ°C', 'temperature').code).toBe('unit-wrong-kind');
});

test('what is formatted reads back as the same quantity, every unit, spelling and form', () => {
  fc.assert(
    fc.property(authored, ({ text, kind }) => {
      const parsed = parseQuantity(text, { kind });
      if (!parsed.ok) throw new Error(`${text}: ${parsed.problem.text}`);
      const again = parseQuantity(formatQuantity(parsed.quantity), { kind });
      expect(again).toEqual(parsed);
    }),
    { numRuns: 1000 },
  );
});

test('no text makes the parser throw, and the place of a problem lies in the text', () => {
  const piece = fc.constantFrom('1', '.', '..', '/', '-', '+', '±', ' ', 'mm', '"', 'e5', ',', 'NaN', '°C', '3/4', '∞');
  fc.assert(
    fc.property(fc.array(fc.oneof(piece, fc.string({ maxLength: 3 })), { maxLength: 10 }), (pieces) => {
      const text = pieces.join('');
      const parsed = parseQuantity(text, { kind: 'length', defaultUnit: 'mm' });
      if (parsed.ok) return;
      const { from, to } = parsed.problem;
      expect(from >= 0 && from <= to && to <= text.length).toBe(true);
    }),
    { numRuns: 1000 },
  );
});

test('a very long text is refused quickly', () => {
  const began = performance.now();
  for (const text of [
    '1'.repeat(1e5),
    ' '.repeat(1e5),
    `1 ${'m'.repeat(1e5)}`,
    `1 m${' '.repeat(1e5)}m`,
    `1${' +'.repeat(5e4)}`,
    '1 '.repeat(5e4),
  ]) {
    expect(refused(text).code).toMatch(/number|unit/);
  }
  expect(performance.now() - began).toBeLessThan(1500);
});
