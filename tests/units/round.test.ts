import fc from 'fast-check';
import { expect, test } from 'vitest';
import { formatFraction } from '../../src/units/format.ts';
import { roundInward, roundNearest } from '../../src/units/round.ts';
import { decimalsOf } from '../../src/units/step.ts';

const THOU = 25_400;
const HUNDREDTH = 10_000;

test('every thou from 1 to 4000: inward to 0.01 mm and back never leaves the limits and loses no reading', () => {
  for (let i = 1; i <= 4000; i += 1) {
    const [low, high] = [i * THOU, (i + 5) * THOU];
    const mm = roundInward(low, high, HUNDREDTH)!;
    expect(mm.low % HUNDREDTH).toBe(0);
    expect(mm.low >= low && mm.low - low < HUNDREDTH).toBe(true);
    expect(mm.high <= high && high - mm.high < HUNDREDTH).toBe(true);
    const back = roundInward(mm.low, mm.high, THOU)!;
    expect(back.low >= mm.low && back.high <= mm.high).toBe(true);
    expect(roundInward(low, high, THOU)).toEqual({ low, high, counts: 6 });
  }
});

/** Whole-number arithmetic as the independent way: halves of a nanometre as BigInt. */
const halfNm = fc.integer({ min: -4_000_000_000, max: 4_000_000_000 });

test('inward rounding of lengths agrees with whole-number arithmetic, halves too', () => {
  const steps = fc.constantFrom(1000, 5000, 10_000, 12_700, 25_400, 198_437.5, 396_875, 100_000);
  fc.assert(
    fc.property(halfNm, fc.nat(10_000_000), steps, (low2, width2, step) => {
      const step2 = BigInt(step * 2);
      const up = (v: bigint) => -floor(-v, step2);
      const [first, last] = [up(BigInt(low2)), floor(BigInt(low2 + width2), step2)];
      const expected =
        first > last
          ? undefined
          : { low: Number(first) * step, high: Number(last) * step, counts: Number(last - first) + 1 };
      expect(roundInward(low2 / 2, (low2 + width2) / 2, step)).toEqual(expected);
    }),
  );
});

function floor(a: bigint, b: bigint): bigint {
  return a >= 0n || a % b === 0n ? a / b : a / b - 1n;
}

test('a length one nanometre off a step is not taken for the step, at ten metres', () => {
  expect(roundInward(1e10 + 1, 1e10 + HUNDREDTH, HUNDREDTH)?.low).toBe(1e10 + HUNDREDTH);
});

test('other kinds: a step missed by the noise of doubles is the step', () => {
  expect(roundInward(0.449, 0.45, 0.001)?.counts).toBe(2);
  expect(roundInward(0.1 + 0.2, 0.3, 0.1)?.counts).toBe(1);
  expect(roundInward(0.3001, 0.3999, 0.1)).toBeUndefined();
});

test('nearest, ties away from zero', () => {
  expect([2.5, -2.5, 2.4, -2.4, -0.1].map((v) => roundNearest(v, 1))).toEqual([3, -3, 2, -2, 0]);
  expect(roundNearest(0.15, 0.1)).toBeCloseTo(0.2, 12);
  expect(roundNearest(15_000, 10_000)).toBe(20_000);
});

test('decimals of a step in a unit', () => {
  expect(decimalsOf(10_000, 'mm')).toBe(2);
  expect(decimalsOf(12_700, 'in')).toBe(4);
  expect(decimalsOf(25_400, 'thou')).toBe(0);
  expect(decimalsOf(10_000, 'in')).toBeUndefined();
  expect(decimalsOf(0.1, '°C')).toBe(1);
  expect(decimalsOf(0.5 / 1.8, '°F')).toBe(1);
  expect(decimalsOf(0.001, '%')).toBe(1);
});

test('a step or value that is no number is our bug', () => {
  expect(() => roundInward(0, 1, 0)).toThrow(RangeError);
  expect(() => roundInward(NaN, 1, 1)).toThrow(RangeError);
});

test('a fraction is never further off than half its denominator', () => {
  fc.assert(
    fc.property(halfNm, fc.constantFrom(1, 2, 4, 8, 16, 32, 64, 128), (value2, denominator) => {
      const { text, residualNm } = formatFraction(value2 / 2, denominator);
      expect(Math.abs(residualNm)).toBeLessThanOrEqual(25.4e6 / (2 * denominator));
      expect(readFraction(text) * 25.4e6).toBe(value2 / 2 + residualNm);
    }),
  );
});

function readFraction(text: string): number {
  const [, sign, whole, n, d] = /^(-?)(?:(\d+)(?: |$))?(?:(\d+)\/(\d+))?$/.exec(text)!;
  return (sign === '-' ? -1 : 1) * (Number(whole ?? 0) + Number(n ?? 0) / Number(d ?? 1));
}
