/** Moisture of wood against published values: equilibrium, movement, their inverses. */
import { describe, expect, test } from 'vitest';
import { EQUILIBRIUM_RANGE, equilibriumMoisture, humidityFor } from '../../src/reference/equilibrium.ts';
import {
  agrees,
  changeNear10,
  changeOfSize,
  changeWide,
  coefficientOf,
  coefficientUsed,
  movements,
  shrinkageOf,
} from '../../src/reference/movement.ts';
import { row as published, rowsOfItem } from './rows.ts';

/** USDA Wood Handbook, FPL-GTR-190, table 4-2, as reproduced on a wood-trade page: eleven of its rows, seven of its columns. */
const COLUMNS_F = [30, 50, 70, 80, 90, 110, 130];
const TABLE: readonly (readonly [humidity: number, percent: readonly number[]])[] = [
  [25, [5.5, 5.5, 5.4, 5.3, 5.1, 4.9, 4.5]],
  [30, [6.3, 6.3, 6.2, 6.1, 5.9, 5.6, 5.2]],
  [35, [7.1, 7.1, 6.9, 6.8, 6.7, 6.3, 5.9]],
  [40, [7.9, 7.9, 7.7, 7.6, 7.4, 7.0, 6.6]],
  [45, [8.7, 8.7, 8.5, 8.3, 8.1, 7.7, 7.2]],
  [50, [9.5, 9.5, 9.2, 9.1, 8.9, 8.4, 7.9]],
  [55, [10.4, 10.3, 10.1, 9.9, 9.7, 9.2, 8.7]],
  [60, [11.3, 11.2, 11.0, 10.8, 10.5, 10.0, 9.4]],
  [65, [12.4, 12.3, 12.0, 11.7, 11.5, 11.0, 10.3]],
  [70, [13.5, 13.4, 13.1, 12.9, 12.6, 12.0, 11.3]],
  [80, [16.5, 16.4, 16.0, 15.7, 15.4, 14.7, 14.0]],
];
const cells = TABLE.flatMap(([humidity, row]) => row.map((percent, i) => ({ f: COLUMNS_F[i]!, humidity, percent })));
const celsius = (f: number): number => (f - 32) / 1.8;

describe('equilibrium moisture', () => {
  test('both forms lie within 0.1 % of the published table, every cell', () => {
    expect(cells).toHaveLength(77);
    const off = cells.map(({ f, humidity, percent }) => ({
      f: Math.abs(100 * equilibriumMoisture('fahrenheit', f, humidity / 100) - percent),
      c: Math.abs(100 * equilibriumMoisture('celsius', celsius(f), humidity / 100) - percent),
    }));
    expect(Math.max(...off.map((one) => one.f))).toBeLessThan(0.1);
    expect(Math.max(...off.map((one) => one.c))).toBeLessThan(0.1);
  });

  test('the two forms say the same over the whole range, within 0.1 %', () => {
    const { lowF, highF, lowHumidity, highHumidity } = EQUILIBRIUM_RANGE;
    for (let f = lowF; f <= highF; f += 2)
      for (let h = lowHumidity; h <= highHumidity; h += 0.01)
        expect(
          Math.abs(equilibriumMoisture('fahrenheit', f, h) - equilibriumMoisture('celsius', celsius(f), h)),
        ).toBeLessThan(0.001);
  });

  test.each(rowsOfItem(2).map((row) => [row.id, row] as const))('%s', (_, row) => {
    const { T_F: f, T_C: c, RH_pct: humidity } = row.inputs as Record<string, number>;
    const got =
      100 *
      (c === undefined
        ? equilibriumMoisture('fahrenheit', f!, humidity! / 100)
        : equilibriumMoisture('celsius', c, humidity! / 100));
    expect(Math.abs(got - Number(row.expected))).toBeLessThanOrEqual(Number(row.tolerance));
  });

  test('humidity for a moisture, and back again, over the whole range', () => {
    for (const form of ['fahrenheit', 'celsius'] as const)
      for (let f = 30; f <= 130; f += 10)
        for (let h = 0.05; h <= 0.85; h += 0.05) {
          const degrees = form === 'celsius' ? celsius(f) : f;
          expect(humidityFor(form, degrees, equilibriumMoisture(form, degrees, h))).toBeCloseTo(h, 9);
        }
  });

  test('it rises with humidity, and from 50 °F up falls with warmth; below, the table too is flat', () => {
    for (let f = 30; f < 130; f += 10)
      for (let h = 0.05; h < 0.85; h += 0.05) {
        const here = equilibriumMoisture('fahrenheit', f, h);
        expect(equilibriumMoisture('fahrenheit', f, h + 0.05)).toBeGreaterThan(here);
        if (f >= 50) expect(equilibriumMoisture('fahrenheit', f + 10, h)).toBeLessThan(here);
      }
  });
});

describe('movement', () => {
  const coefficients = rowsOfItem(3).filter(({ id }) => id.startsWith('coef.') && !id.startsWith('coef.fromS.'));

  test.each(coefficients.map((row) => [row.id, row] as const))('%s', (_, row) => {
    const { species, S_R, S_T } = row.inputs as { species: string; S_R: number; S_T: number };
    const own = movements[species.toLowerCase().replaceAll(' ', '-').replace('american-', '')]!;
    const [radial, tangential] = row.expected as [number, number];
    expect(own.radial).toMatchObject({ shrinkage: S_R, coefficient: radial });
    expect(own.tangential).toMatchObject({ shrinkage: S_T, coefficient: tangential });
    for (const [shrinkage, coefficient] of [
      [S_R, radial],
      [S_T, tangential],
    ] as const)
      expect(Math.abs(coefficientOf(shrinkage) - coefficient)).toBeLessThanOrEqual(Number(row.tolerance));
  });

  test.each(
    rowsOfItem(3)
      .filter(({ id }) => id.startsWith('coef.fromS.'))
      .map((row) => [row.id, row] as const),
  )('%s: what follows from the shrinkage', (_, row) => {
    const { S_R, S_T } = row.inputs as { S_R: number; S_T: number };
    const [radial, tangential] = row.expected as [number, number];
    expect(Math.abs(coefficientOf(S_R) - radial)).toBeLessThanOrEqual(Number(row.tolerance));
    expect(Math.abs(coefficientOf(S_T) - tangential)).toBeLessThanOrEqual(Number(row.tolerance));
  });

  test('where the tables disagree the larger movement is used, and the row is unverified', () => {
    for (const [species, ways] of Object.entries(movements))
      for (const one of Object.values(ways)) {
        expect(coefficientUsed(one), species).toBeGreaterThanOrEqual(one.coefficient);
        if (!agrees(one)) {
          expect(one.certainty, species).toBe('unverified');
          expect(coefficientUsed(one), species).toBe(Math.max(one.coefficient, coefficientOf(one.shrinkage)));
        }
      }
    const disputed = Object.entries(movements).filter(([, ways]) => !agrees(ways.radial) || !agrees(ways.tangential));
    expect(disputed.map(([species]) => species)).toEqual(['true-mahogany', 'african-mahogany', 'limba']);
  });

  test.each(['dim.whitefir', 'dim.whitefir.in', 'dim.maple14'].map((id) => [id, published(id)] as const))(
    '%s',
    (_, row) => {
      const { D_I_mm, D_I_in, C_T, M_I = 0, M_F, dM } = row.inputs as Record<string, number>;
      const got = changeNear10({
        size: (D_I_mm ?? D_I_in)!,
        coefficient: C_T!,
        shrinkage: 0,
        from: M_I / 100,
        to: (M_F ?? dM!) / 100,
      });
      expect(Math.abs(got - Number(row.expected))).toBeLessThanOrEqual(Number(row.tolerance));
    },
  );

  test('dim.eq13_3', () => {
    const row = published('dim.eq13_3');
    const { D_I_mm, S_T, M_I, M_F } = row.inputs as Record<string, number>;
    const got = changeWide({ size: D_I_mm!, coefficient: 0, shrinkage: S_T!, from: M_I! / 100, to: M_F! / 100 });
    expect(Math.abs(got - Number(row.expected))).toBeLessThanOrEqual(Number(row.tolerance));
  });

  test('the wide equation takes over outside of 6 to 14 %, and wood above 30 % no longer moves', () => {
    const wood = { size: 100, coefficient: 0.00248, shrinkage: 7.1 };
    expect(changeOfSize({ ...wood, from: 0.08, to: 0.11 })).toBe(changeNear10({ ...wood, from: 0.08, to: 0.11 }));
    expect(changeOfSize({ ...wood, from: 0.08, to: 0.18 })).toBe(changeWide({ ...wood, from: 0.08, to: 0.18 }));
    expect(changeOfSize({ ...wood, from: 0.08, to: 0.4 })).toBe(changeOfSize({ ...wood, from: 0.08, to: 0.3 }));
    // From green to ovendry the size falls by the shrinkage itself.
    expect(changeOfSize({ ...wood, from: 0.3, to: 0 })).toBeCloseTo(-7.1, 9);
  });

  test('shrinkage and coefficient follow from each other', () => {
    for (let s = 2; s < 12; s += 0.5) expect(shrinkageOf(coefficientOf(s))).toBeCloseTo(s, 12);
  });
});
