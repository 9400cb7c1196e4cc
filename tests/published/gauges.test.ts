/** Published values of gauge suitability. The guard band is checked on a card in tests/cards/acceptance.test.ts. */
import { expect, test } from 'vitest';
import type { GaugeSeen } from '../../src/check/gauges.ts';
import { tooCoarse, tooUncertain } from '../../src/check/gauges.ts';
import { limits } from '../../src/cards/figures.ts';
import type { Use } from '../../src/facts/facts.ts';
import type { Leaf } from '../../src/facts/leaf.ts';
import { gaugeRules } from '../../src/reference/gauges.ts';
import { parseQuantity } from '../../src/units/parse.ts';
import type { Quantity } from '../../src/units/quantity.ts';
import { row, rowsOfItem } from './rows.ts';

const mm = (value: number): number => Math.round(value * 1e6);

function length(text: string): Quantity {
  const read = parseQuantity(text, { kind: 'length', defaultUnit: 'mm' });
  if (!read.ok) throw new Error(text);
  return read.quantity;
}

const gauge = (step: string, off: string) =>
  ({ rule: gaugeRules.measure, step: length(step), off: length(off) }) as unknown as GaugeSeen;

test('every row of the item is checked here', () => {
  expect(rowsOfItem(12).map(({ id }) => id)).toEqual(['gage.10', 'gage.tur', 'guard']);
});

test('ten to one: 20 ±0.05 takes 0.01 mm and nothing coarser', () => {
  const { inputs, expected } = row('gage.10');
  const span = mm(inputs['T'] as number);
  expect(tooCoarse(gauge(`${expected as number}`, '0.001'), span)).toBe(false);
  expect(tooCoarse(gauge('0.011', '0.001'), span)).toBe(true);
});

test('four to one: the ratio of 0.2 and 0.025 is 4, which is just enough', () => {
  const { inputs, expected } = row('gage.tur');
  const { T, U95 } = inputs as { T: number; U95: number };
  expect(T / (2 * U95)).toBeCloseTo(expected as number, 9);
  expect(gaugeRules.measure.ratio).toBe(expected);
  expect(tooUncertain(gauge('0.01', `${U95}`), mm(T))).toBe(false);
  expect(tooUncertain(gauge('0.01', `${U95 + 0.0001}`), mm(T))).toBe(true);
});

test('guard band: 9.9 to 10.1 less 0.02 on either side', () => {
  const { inputs, expected } = row('guard');
  const { L, U, U95 } = inputs as { L: number; U: number; U95: number };
  const q = length(`${L}..${U}`);
  const use = Object.assign(() => q, { fact: () => q }) as unknown as Use;
  const name = { kind: 'name', text: 'gauge', fact: 'x' } as const;
  const read = limits(use, { id: 'x' } as Leaf<Quantity>, { name, unit: 'mm', step: mm(0.01), uncertainty: mm(U95) });
  expect(read).toMatchObject({ ok: true });
  const { low, high } = (read as { proven: { low: string; high: string } }).proven;
  expect([Number(low), Number(high)]).toEqual(expected);
});
