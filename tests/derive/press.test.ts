/** Facts of the press of the sample, worked out again beside the rules. */
import { expect, test } from 'vitest';
import { checkAll } from '../../src/compile.ts';
import { memoryHost } from '../../src/host/memory.ts';
import { pressable } from '../../src/derive/rules/press-pressure.ts';
import type { Facts } from '../../src/facts/facts.ts';
import type { Quantity } from '../../src/units/quantity.ts';
import type { Edit } from '../cases/workspace.ts';
import { edited, sample } from '../cases/workspace.ts';
import { valueOf } from './subject.ts';

const plant = 'models/plant/plant.yaml';
const factsWith = (...edits: readonly Edit[]): Facts =>
  checkAll(memoryHost(edits.length > 0 ? edited(edits) : sample())).models[0]!.hands[0]!.facts;
const inPlant = (find: string, replace: string): Edit => ({ file: plant, find, replace });

const facts = factsWith();
const kPa = (value: number): Quantity<'pressure'> => ({
  kind: 'pressure',
  value: value * 1000,
  unit: 'kPa',
  decimals: 0,
});
const band = (low: number, high: number) => ({ ...kPa((low + high) / 2), low: low * 1000, high: high * 1000 });

test('the softer of cap and back: red alder at 459.2 kg/m³ on the line from 400 to 800', () => {
  expect(valueOf(facts, 'press.bears').value).toBeCloseTo((700 + ((459.2 - 400) / 400) * 1000) * 1000, 3);
  expect(valueOf(facts, 'press.bears.cap').value).toBeGreaterThan(valueOf(facts, 'press.bears.back').value);
});

test('a species may give its own, and where that is less the band is cut to it and its middle is set', () => {
  const own = "joint-pressure: { value: 720 ±20 kPa, reason: Test joints, name: Lead, date: '2026-01-05' }";
  const cut = factsWith(inPlant('red-alder: { title: Red alder }', `red-alder: { title: Red alder, ${own} }`));
  expect(valueOf(cut, 'press.bears.back').value).toBe(700_000);
  expect(valueOf(cut, 'press.joint-pressure')).toMatchObject({ low: 650_000, high: 700_000, value: 675_000 });
});

test('what is asked for and what is borne: whole, cut, or nothing left', () => {
  expect(pressable(band(650, 750), kPa(750))).toMatchObject({ ok: true, pressure: band(650, 750) });
  expect(pressable(band(650, 750), kPa(650))).toMatchObject({ ok: true, pressure: { low: 650_000, high: 650_000 } });
  expect(pressable(band(650, 750), kPa(649)).ok).toBe(false);
});

test('force and gauge follow from the area that is glued', () => {
  const area = valueOf(facts, 'joint.area').value;
  const rams = (2 * Math.PI * 0.1 ** 2) / 4;
  const force = valueOf(facts, 'press.stack.force');
  expect(force.low).toBeCloseTo(650_000 * area, 6);
  expect(force.high).toBeCloseTo(750_000 * area, 6);
  expect(valueOf(facts, 'press.stack.gauge').value).toBeCloseTo((700_000 * area) / rams, 3);
  expect(valueOf(facts, 'press.row.gauge').high).toBeCloseTo((2 * 750_000 * area) / rams, 3);
  expect(valueOf(facts, 'press.row.scale').low).toBeCloseTo((2 * 650_000 * area) / rams / 18e6, 9);
});

test('bodies: the fewest of what the glue allows and what the daylight holds', () => {
  // (8 min − 40 s) ÷ (60 s + 20 s) = 5.5; (400 − 20) ÷ (51.08 + 20) = 5.3; (120 − 20) ÷ (50.62 + 20) = 1.4.
  expect(valueOf(facts, 'press.bodies.time').value).toBe(5);
  expect(valueOf(facts, 'press.layers.daylight').value).toBe(5);
  expect(valueOf(facts, 'press.layers.least').value).toBe(2);
  expect(valueOf(facts, 'press.stack.bodies').value).toBe(5);
  // Five bodies make two stacks of two.
  expect(valueOf(facts, 'press.row.bodies').value).toBe(4);
  expect(valueOf(facts, 'press.stack.assembly').value).toBe(5 * 80 + 40);
  expect(valueOf(facts, 'press.stack.closed').value).toBe(5 * 80 + 40 - 60);
  const blank = valueOf(facts, 'thickness.blank');
  expect(valueOf(facts, 'press.stack.height').high).toBe(5 * blank.high! + 6 * 20e6);
});

test('daylight for four, a shorter closed time, one stack only', () => {
  expect(valueOf(factsWith(inPlant('daylight: 400', 'daylight: 304.3')), 'press.layers.daylight').value).toBe(3);
  expect(valueOf(factsWith(inPlant('daylight: 400', 'daylight: 304.5')), 'press.layers.daylight').value).toBe(4);
  // (4 min + 60 s − 40 s) ÷ 80 s = 3.25.
  expect(valueOf(factsWith(inPlant('closed-time: 7 min', 'closed-time: 4 min')), 'press.bodies.time').value).toBe(3);
  const alone = factsWith(inPlant('side-by-side: 2', 'side-by-side: 1'));
  expect(valueOf(alone, 'press.row.gauge')).toEqual(valueOf(alone, 'press.stack.gauge'));
});
