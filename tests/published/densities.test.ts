/** Densities at 12 % moisture against published values; source and certainty stand in the rows of check-values.json. */
import { expect, test } from 'vitest';
import { densities, densityAt12 } from '../../src/reference/densities.ts';
import { unitById } from '../../src/units/unit.ts';
import { row as published } from './rows.ts';

const rows = [
  'rho12.basswood',
  'rho12.bigleaf_maple',
  'rho12.black_cherry',
  'rho12.red_maple',
  'rho12.sugar_maple',
  'rho12.yellow-poplar',
].map(published);

test.each(rows.map((row) => [row.id, row] as const))('%s', (_, row) => {
  const { species, G12 } = row.inputs as { species: string; G12: number };
  const own = densities[species.replaceAll(' ', '-')]!;
  expect(own.gravity12).toBe(G12);
  expect(Math.abs(densityAt12(own) - Number(row.expected))).toBeLessThanOrEqual(Number(row.tolerance));
});

test('rho.example: the handbook’s worked example, in pounds a cubic foot', () => {
  const row = published('rho.example');
  const density = unitById('lb/ft³').fromBase(densityAt12({ gravity12: 0.4, certainty: 'seen' }));
  // 62.43 lb/ft³ of water is rounded: 1000 kg/m³ are 62.428.
  expect(Math.abs(density - Number(row.expected))).toBeLessThanOrEqual(Number(row.tolerance));
});
