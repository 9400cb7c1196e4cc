/** Published rows of what is derived here: frets, board feet, the tolerance stack. */
import { describe, expect, test } from 'vitest';
import { boardMeasure } from '../../src/derive/rules/blank-size.ts';
import { fretFromNut } from '../../src/derive/rules/neck-lines.ts';
import { add, combine, rootSumSquare, subtract, withCauses, worstCase } from '../../src/units/arithmetic.ts';
import { formatNumber } from '../../src/units/format.ts';
import type { Cause, Length } from '../../src/units/quantity.ts';
import { unitById } from '../../src/units/unit.ts';
import type { Row } from './rows.ts';
import { row, rowsOfItem } from './rows.ts';

const NM_PER_INCH = 25_400_000;
const number = (r: Row, name: string): number => Number(r.inputs[name]);

describe('frets', () => {
  const rows = rowsOfItem(8).filter((r) => r.id !== 'fret.const');
  test.each(rows.map((r) => [r.id, r] as const))('%s', (_, r) => {
    const unit = unitById(String(r.inputs['unit']));
    const scaleNm = Math.round(unit.toBase(number(r, 'L')));
    const found = unit.fromBase(fretFromNut(scaleNm, number(r, 'n')));
    expect(Math.abs(found - Number(r.expected))).toBeLessThanOrEqual(Number(r.tolerance));
  });

  test('the constant of the rule', () => {
    const r = row('fret.const');
    const scaleNm = 1e14;
    expect(Math.abs(scaleNm / fretFromNut(scaleNm, 1) - Number(r.expected))).toBeLessThanOrEqual(Number(r.tolerance));
  });
});

describe('board feet', () => {
  const feet = (thick: number, wide: number, long: number, pieces = 1) =>
    boardMeasure({
      pieces,
      roughNm: thick * NM_PER_INCH,
      widthNm: wide * NM_PER_INCH,
      lengthNm: long * NM_PER_INCH,
    }).value;
  test.each(['bf.b', 'bf.c', 'bf.d'])('%s', (id) => {
    const r = row(id);
    const length = 'L_ft' in r.inputs ? 12 * number(r, 'L_ft') : number(r, 'L');
    // The expected value has 7 decimals at most; held in m³, the last digits of a double lie far behind them.
    expect(formatNumber(feet(number(r, 'T'), number(r, 'W'), length), 'bf', 7)).toBe(Number(r.expected).toFixed(7));
  });

  test('1 × 9 × 96 is 6, and stock under an inch counts as an inch (rough rule, NHLA practice as trade pages quote it)', () => {
    expect(formatNumber(feet(1, 9, 96), 'bf', 9)).toBe('6.000000000');
    expect(feet(0.75, 9, 96)).toBe(feet(1, 9, 96));
    expect(feet(1.5, 9, 96, 3)).toBeCloseTo(3 * feet(1.5, 9, 96), 15);
  });
});

const cause = (name: string, t: number): Cause => ({ cause: name, sensitivity: 1, minus: -t, plus: t });
const of = (value: number, ...causes: Cause[]): Length =>
  withCauses({ kind: 'length', value, unit: 'mm', decimals: 2 }, causes);

describe('tolerance stack', () => {
  test.each([
    [row('rss.a').inputs['t'], row('rss.a').expected, row('rss.a').tolerance, row('rss.a').source],
    [[0.005, 0.003, 0.01, 0.002], [0.01175, 0.02], 5e-6, 'worked stack, root-sum-square and worst case [recomputed]'],
  ])('%j: %j', (t, expected, tolerance) => {
    const causes = (t as number[]).map((one, i) => cause(String(i), one));
    const [rss, worst] = expected as [number, number];
    expect(Math.abs(rootSumSquare(causes) - rss)).toBeLessThanOrEqual(Number(tolerance));
    expect(Math.abs(worstCase(causes).plus - worst)).toBeLessThanOrEqual(Number(tolerance));
    expect(Math.abs(worstCase(causes).minus + worst)).toBeLessThanOrEqual(Number(tolerance));
  });

  test('a cause met twice is one cause: it cancels, or it doubles', () => {
    const belt = cause('belt', 10);
    const other = cause('other', 3);
    const gone = subtract(of(500, belt, other), of(200, belt));
    expect([gone.low, gone.high]).toEqual([297, 303]);
    expect(gone.causes).toEqual([other]);
    const twice = add(of(500, belt), of(200, belt));
    expect([twice.low, twice.high]).toEqual([680, 720]);
    expect(rootSumSquare(twice.causes!)).toBe(20);
    const part = combine({ factor: 1, of: of(500, belt) }, { factor: -0.5, of: of(200, belt) });
    expect([part.low, part.high]).toEqual([395, 405]);
  });

  test('limits that lean to one side keep to their side', () => {
    const over: Cause = { cause: 'board', sensitivity: 1, minus: 0, plus: 10 };
    const { low, high } = subtract(of(100), of(40, over));
    expect([low, high]).toEqual([50, 60]);
  });
});
