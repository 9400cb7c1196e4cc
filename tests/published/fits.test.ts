/** Fits and two-pin location against published rows; source and certainty stand in check-values.json. */
import { expect, test } from 'vitest';
import { absorbedByDiamond, acrossError, rotationError } from '../../src/geometry/two-pin.ts';
import { deviationsOf } from '../../src/reference/fits.ts';
import type { FitClass } from '../../src/reference/fits.ts';
import { row, rowsOfItem } from './rows.ts';

const CHECKED = ['fit.8H7g6', 'iso286', 'iso286b', 'pins.e', 'pins.rot'];

test('every row of fits and pins is checked here', () => {
  expect(
    rowsOfItem(13)
      .map(({ id }) => id)
      .toSorted(),
  ).toEqual(CHECKED);
});

test.each([
  ['iso286', 6.001, 10],
  ['iso286b', 10.001, 18],
] as const)('%s: limit deviations at both ends of the range', (id, least, most) => {
  const { inputs, expected } = row(id);
  const classes = inputs['class'] as readonly FitClass[];
  for (const diameter of [least, most]) expect(classes.map((fit) => deviationsOf(fit, diameter))).toEqual(expected);
});

test('outside of the rows there is no guess', () => {
  expect([6, 18.001].map((diameter) => deviationsOf('H7', diameter))).toEqual([undefined, undefined]);
});

test('fit.8H7g6: clearance, least and most', () => {
  const [hole, pin] = [deviationsOf('H7', 8)!, deviationsOf('g6', 8)!];
  expect([hole[1] - pin[0], hole[0] - pin[1]]).toEqual(row('fit.8H7g6').expected);
});

test('pins.e and pins.rot: across the line of the pins, and turned', () => {
  const { c1, c2, L, a } = row('pins.e').inputs as Record<'c1' | 'c2' | 'L' | 'a', number>;
  const off = (id: string, found: number) => Math.abs(found - Number(row(id).expected));
  expect(off('pins.e', acrossError({ first: c1, second: c2 }, a, L))).toBeLessThanOrEqual(
    Number(row('pins.e').tolerance),
  );
  expect(off('pins.rot', rotationError({ first: c1, second: c2 }, L))).toBeLessThanOrEqual(
    Number(row('pins.rot').tolerance),
  );
});

test('a diamond of 9.97 in a hole of 10, land 2, takes 0.0723 either way', () => {
  // Derived: (−w + √(w² + D² − d²))/2, about D·c/(2w).
  expect(absorbedByDiamond(2, 10, 9.97)).toBeCloseTo(0.0723, 4);
});
