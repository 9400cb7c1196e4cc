/** Limits, target and acceptance limits: three things, and the rule of which counts on every card that has limits. */
import { describe, expect, test } from 'vitest';
import type { Limits } from '../../src/cards/card.ts';
import { limits } from '../../src/cards/figures.ts';
import { compileAll } from '../../src/compile.ts';
import type { Use } from '../../src/facts/facts.ts';
import { Leaf } from '../../src/facts/leaf.ts';
import type { Finding } from '../../src/findings/finding.ts';
import { memoryHost } from '../../src/host/memory.ts';
import { parseQuantity } from '../../src/units/parse.ts';
import type { Quantity } from '../../src/units/quantity.ts';
import type { Edit } from '../cases/workspace.ts';
import { edited } from '../cases/workspace.ts';
import { dayNumber } from '../../src/check/days.ts';
import { row } from '../published/rows.ts';

const plant = 'models/plant/plant.yaml';
const full: Edit = {
  file: plant,
  find: 'plant: { name: Sample Works,',
  replace: 'plant: { guard-band: full, name: Sample Works,',
};
const compile = (...edits: Edit[]) => compileAll(memoryHost(edited(edits)), '2026-11-25');
const findings = (...edits: Edit[]): Finding[] => {
  const { checked } = compile(...edits);
  return [...checked.findings, ...checked.models.flatMap((model) => model.findings)];
};

function quantity(text: string): Quantity {
  const read = parseQuantity(text, { kind: 'length', defaultUnit: 'mm' });
  if (!read.ok) throw new Error(text);
  return read.quantity;
}

/** Limits of a length as a gauge of 0.01 mm shows them, with U95 in mm. */
function drawn(text: string, u: number, step = 0.01) {
  const leaf = { id: 'x' } as Leaf<Quantity>;
  const use = Object.assign(() => quantity(text), { fact: () => undefined }) as unknown as Use;
  const name = { kind: 'name', text: 'gauge', fact: 'x' } as const;
  const read = limits(use, leaf, { name, unit: 'mm', step: step * 1e6, uncertainty: Math.round(u * 1e6) });
  if (!read.ok) throw new Error(read.why);
  return read;
}

describe('limits drawn in by the uncertainty', () => {
  test('published: 9.9 to 10.1 with 0.02 is 9.92 to 10.08', () => {
    const { inputs, expected } = row('guard');
    const { L, U, U95 } = inputs as { L: number; U: number; U95: number };
    const read = drawn(`${L}..${U}`, U95);
    const { low, high } = read.proven as { low: string; high: string };
    expect([Number(low), Number(high)]).toEqual(expected);
    // The limits and the target stay what they were.
    expect(read.limits).toMatchObject({ low: '9.90', high: '10.10', target: '10.00' });
  });

  test('inward to the step, never outward', () => {
    expect(drawn('9.9..10.1', 0.025).proven).toMatchObject({ low: '9.93', high: '10.07', unit: 'mm' });
    expect(drawn('9.9..10.1', 0.02, 0.05).proven).toMatchObject({ low: '9.95', high: '10.05' });
  });

  test('the second unit lies inside the first', () => {
    const { proven } = drawn('9.9..10.1', 0.02);
    if (proven === undefined || proven === 'nothing' || !proven.second) throw new Error('no second unit');
    expect(Number(proven.second.low) * 25.4).toBeGreaterThanOrEqual(9.92);
    expect(Number(proven.second.high) * 25.4).toBeLessThanOrEqual(10.08);
  });

  test('one reading left is one, none is nothing', () => {
    expect(drawn('9.9..10.1', 0.1).proven).toMatchObject({ low: '10.00', high: '10.00' });
    expect(drawn('9.9..10.1', 0.11).proven).toBe('nothing');
    // Between two steps.
    expect(drawn('9.9..10.09', 0.092).proven).toBe('nothing');
  });
});

describe('a plant that asks for acceptance limits', () => {
  const cards = compile(full).models.flatMap((model) => model.cards.map(({ card }) => card));

  test('is sound where its gauges say how far they are off', () => {
    const found = findings(full);
    expect([...new Set(found.map(({ id }) => id))]).toEqual(['guard-band-without-uncertainty']);
    // The moisture meter of the sample has none.
    for (const { what } of found) expect(what).toContain('"moisture-meter"');
  });

  test('none of its cards is printed without', () => {
    expect(cards).toEqual([]);
    const meter: Edit = {
      file: plant,
      find: '    resolution: 0.1 %\n',
      replace: '    resolution: 0.1 %\n    uncertainty: 0.5 %\n',
    };
    expect(findings(full, meter)).toEqual([]);
    const made = compile(full, meter).models.flatMap((model) => model.cards.map(({ card }) => card));
    const measured = made.filter(({ checks }) => checks.some((check) => check.limits));
    expect(measured.length).toBeGreaterThan(10);
    let seen = 0;
    for (const card of measured) {
      expect(card.accepts?.say).toBe('common.accept-drawn-in');
      for (const { limits: shown } of card.checks) {
        if (!shown) continue;
        seen += 1;
        inside(shown);
      }
    }
    expect(seen).toBeGreaterThan(30);
  });

  test('a station may ask for itself, or be left out', () => {
    const signOff: Edit = {
      file: plant,
      find: '    title: Sign-off\n',
      replace: '    title: Sign-off\n    guard-band: full\n',
    };
    const accepts = (...edits: Edit[]) =>
      Object.fromEntries(
        compile(...edits).models[0]!.cards.map(({ card }) => [card.key.station, card.accepts?.say ?? 'none']),
      );
    expect(accepts()).toMatchObject({
      'sign-off': 'common.accept-limits',
      sizing: 'common.accept-limits',
      picking: 'none',
    });
    expect(accepts(signOff)).toMatchObject({ 'sign-off': 'common.accept-drawn-in', sizing: 'common.accept-limits' });
    const store: Edit = {
      file: plant,
      find: '    title: Conditioning store\n',
      replace: '    title: Conditioning store\n    guard-band: none\n',
    };
    expect(accepts(full, store)).toMatchObject({
      conditioning: 'common.accept-limits',
      sizing: 'common.accept-drawn-in',
    });
  });
});

/** Inside the limits on both sides, and apart from them. */
function inside({ low, high, acceptance }: Limits): void {
  expect(acceptance).toBeDefined();
  expect(Number(acceptance!.low)).toBeGreaterThan(Number(low));
  expect(Number(acceptance!.high)).toBeLessThan(Number(high));
  expect(Number(acceptance!.low)).toBeLessThanOrEqual(Number(acceptance!.high));
}

describe('the two tests of a gauge', () => {
  const inch = (text: string): Edit => ({
    file: plant,
    find: 'unit: in, resolution: 0.001 in, uncertainty: 0.001 in',
    replace: text,
  });

  test('a tenth of the limits, exactly, is enough; a little more is not', () => {
    // 17.20 ±0.15 mm: 0.3 mm ÷ 10 = 0.03 mm.
    const ids = (step: string) =>
      findings(inch(`unit: mm, resolution: ${step}, uncertainty: 0.02 mm`)).map(({ id }) => id);
    expect(ids('0.03 mm')).toEqual([]);
    expect(ids('0.031 mm')).toContain('gauge-too-coarse');
  });

  test('four to one, exactly, is enough; a little less is not', () => {
    // 0.3 mm ÷ (2 × 0.0375 mm) = 4.
    const found = (u: string) => findings(inch(`unit: mm, resolution: 0.01 mm, uncertainty: ${u}`));
    expect(found('0.0375 mm')).toEqual([]);
    const poor = found('0.0376 mm');
    expect(new Set(poor.map(({ id }) => id))).toEqual(new Set(['gauge-ratio-poor']));
    expect(poor[0]!.what).toContain('0.300 mm ÷ (2 × 0.038 mm)');
    expect(poor[0]!.mend).toContain('would do by its numbers: "caliper" (Caliper).');
  });

  test('a tape is asked for half the limits, and no ratio', () => {
    const tape = (step: string) =>
      findings(inch(`class: rule, unit: mm, resolution: ${step}`))
        .flatMap((one) => [one, ...(one.follows ?? [])])
        .map(({ id }) => id);
    expect(tape('0.1 mm')).toEqual([]);
    // Two readings lie in 17.05 to 17.35, 17.12 and 17.28, and half of 0.30 mm is 0.15 mm.
    expect(tape('0.16 mm')).toContain('gauge-too-coarse');
    expect(tape('1 mm')).toContain('limits-no-gauge-reads');
  });
});

test('days between two dates', () => {
  const between = (a: string, b: string) => dayNumber(b) - dayNumber(a);
  expect(between('2026-11-25', '2026-12-25')).toBe(30);
  expect(between('2027-02-28', '2027-03-01')).toBe(1);
  expect(between('2028-02-28', '2028-03-01')).toBe(2);
  expect(between('2100-02-28', '2100-03-01')).toBe(1);
  expect(between('2000-01-01', '2001-01-01')).toBe(366);
  expect(between('2026-12-31', '2027-01-01')).toBe(1);
});
