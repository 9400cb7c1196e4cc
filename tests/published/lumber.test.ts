/** Standard lumber and board feet against published values. */
import { expect, test } from 'vitest';
import { boardMeasure } from '../../src/derive/rules/blank-size.ts';
import { lumberSizes, thinnestAtLeast } from '../../src/reference/lumber.ts';
import { unitById } from '../../src/units/unit.ts';
import { row as published, rowsOfItem } from './rows.ts';

const INCH_NM = 25_400_000;

/** `1-3/4`, `13/16`: inches. */
const inches = (text: string): number =>
  text.split('-').reduce((sum, piece) => {
    const [top, bottom = '1'] = piece.split('/');
    return sum + Number(top) / Number(bottom);
  }, 0);

test('nhla.s2s: every size, and the thickness it has when surfaced on two sides', () => {
  const row = published('nhla.s2s');
  const { rough } = row.inputs as { rough: string[] };
  const expected = row.expected as string[];
  rough.forEach((name, i) => {
    const size = lumberSizes.find((one) => one.name === name)!;
    expect(size.surfacedIn, name).toBe(inches(expected[i]!));
    expect(size.roughIn, name).toBe(inches(name));
  });
});

test('the thinnest size that is thick enough, to the nanometre', () => {
  expect(thinnestAtLeast(1.5 * INCH_NM, 'roughIn')!.name).toBe('6/4');
  expect(thinnestAtLeast(1.5 * INCH_NM + 1, 'roughIn')!.name).toBe('7/4');
  expect(thinnestAtLeast(1.5 * INCH_NM, 'surfacedIn')!.name).toBe('7/4');
  expect(thinnestAtLeast(4 * INCH_NM + 1, 'roughIn')).toBeUndefined();
});

const feet = rowsOfItem(6).filter(({ id }) => id.startsWith('bf.'));
test.each(feet.map((row) => [row.id, row] as const))('%s', (_, row) => {
  const { T, W, L, L_ft } = row.inputs as Record<string, number>;
  const got = boardMeasure({
    pieces: 1,
    roughNm: T! * INCH_NM,
    widthNm: W! * INCH_NM,
    lengthNm: (L ?? L_ft! * 12) * INCH_NM,
  });
  expect(Math.abs(unitById('bf').fromBase(got.value) - Number(row.expected))).toBeLessThanOrEqual(
    Math.max(Number(row.tolerance), 1e-12),
  );
});
