/** Wood screws and their lead holes against published rows; source and certainty stand in check-values.json. */
import { expect, test } from 'vitest';
import { leadOf, ovendryGravity, screws, shankByFormula, TWO_THIRDS } from '../../src/reference/screws.ts';
import { row, rowsOfItem } from './rows.ts';

const gaugeOf = (id: string): number => Number(row(id).inputs['N']);
const off = (id: string, found: number, of = 0): number =>
  Math.abs(found - Number(Array.isArray(row(id).expected) ? (row(id).expected as number[])[of] : row(id).expected));
const tolerance = (id: string): number => Number(row(id).tolerance);

const withdrawal = ['hard6', 'hard8', 'mid6', 'mid8', 'mid10'].map((name) => `lead.withdraw.${name}`);
const lateral = ['mid6', 'mid8'].map((name) => `lead.lateral.${name}`);
const shanks = ['screw.D4', 'screw.D6'];
const roots = ['screw.Dr6', 'screw.Dr8', 'screw.Dr10'];

test('every row of screws is checked here', () => {
  const checked = [...withdrawal, ...lateral, ...shanks, ...roots];
  expect(
    rowsOfItem(7)
      .map(({ id }) => id)
      .toSorted(),
  ).toEqual(checked.toSorted());
});

test.each(shanks)('%s: table and formula', (id) => {
  expect(off(id, screws[gaugeOf(id)]!.shankIn)).toBeLessThanOrEqual(tolerance(id));
  expect(off(id, shankByFormula(gaugeOf(id)))).toBeLessThanOrEqual(tolerance(id));
});

test('the table of shanks is what its formula gives, gauge by gauge', () => {
  for (const [gauge, { shankIn }] of Object.entries(screws)) {
    expect(shankIn).toBeCloseTo(shankByFormula(Number(gauge)), 9);
  }
});

test.each(roots)('%s', (id) => expect(screws[gaugeOf(id)]!.rootIn).toBe(row(id).expected));

test('no root is listed under gauge 6, and two-thirds of the shank is a fifth under those that are', () => {
  expect(screws[4]!.rootIn).toBeUndefined();
  expect(screws[4]!.shankIn * TWO_THIRDS).toBeCloseTo(0.075, 3);
  for (const gauge of [6, 8, 10]) {
    const { shankIn, rootIn } = screws[gauge]!;
    expect(rootIn! / shankIn).toBeGreaterThan(0.79);
    expect(rootIn! / shankIn).toBeLessThan(0.82);
  }
});

test.each(withdrawal)('%s', (id) => {
  const { least } = leadOf(id.includes('hard') ? 0.61 : 0.6);
  expect(off(id, least * Number(row(id).inputs['Dr']))).toBeLessThanOrEqual(tolerance(id));
});

test.each(lateral)('%s', (id) => {
  const { most, shank } = leadOf(0.6);
  expect(off(id, most * Number(row(id).inputs['Dr']), 0)).toBeLessThanOrEqual(tolerance(id));
  expect(off(id, shank * screws[gaugeOf(id)]!.shankIn, 1)).toBeLessThanOrEqual(tolerance(id));
});

test('the lead hole by density: none required at or below 0.5, root and shank themselves over 0.6', () => {
  expect(leadOf(0.5)).toEqual({ least: 0, most: 7 / 8, shank: 7 / 8 });
  expect(leadOf(0.51).least).toBe(0.7);
  expect(leadOf(0.61)).toEqual({ least: 0.9, most: 1, shank: 1 });
});

test('rho.nds: from gravity on an ovendry basis to density, and back', () => {
  const { G0, M } = row('rho.nds').inputs as Record<'G0' | 'M', number>;
  const density = (G0 / (1 + 0.009 * G0 * M)) * (1 + M / 100);
  expect(off('rho.nds', 62.4 * density)).toBeLessThanOrEqual(tolerance('rho.nds'));
  expect(ovendryGravity(1000 * density)).toBeCloseTo(G0, 9);
});
