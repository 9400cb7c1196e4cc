/**
 * The unit a number is read in on the floor, whichever of its system it was written in: 1.5 cm and 15 mm are one size, and
 * read alike. What was written in inches stays in inches: that is how whoever drew it thinks. Common practice, no source.
 */
import type { Quantity } from './quantity.ts';
import { unitById } from './unit.ts';

const READ_IN: Readonly<Record<string, string>> = {
  cm: 'mm',
  m: 'mm',
  µm: 'mm',
  thou: 'in',
  ft: 'in',
};

/** From so much of it on, in the base unit of the kind, a unit is the one that is read; the largest first. */
const BY_SIZE: Readonly<Record<string, readonly (readonly [string, number])[]>> = {
  time: [
    ['d', 3 * 86_400],
    ['h', 2 * 3600],
    ['min', 120],
    ['s', 0],
  ],
  'mass metric': [
    ['kg', 1],
    ['g', 0],
  ],
  'speed metric': [
    ['m/s', 10],
    ['m/min', 0],
  ],
  'speed inch': [
    ['ft/min', 1],
    ['in/min', 0],
  ],
  'force metric': [
    ['kN', 3000],
    ['N', 0],
  ],
  'pressure metric': [
    ['MPa', 5e6],
    ['kPa', 0],
  ],
  'area metric': [
    ['m²', 0.1],
    ['cm²', 0],
  ],
  'mass inch': [
    ['lb', 0.45359237],
    ['oz', 0],
  ],
};

export function readingUnit({ kind, unit, value }: Pick<Quantity, 'kind' | 'unit' | 'value'>): string {
  const sizes = BY_SIZE[kind] ?? BY_SIZE[`${kind} ${unitById(unit).system}`];
  return sizes?.find(([, from]) => Math.abs(value) >= from)?.[0] ?? READ_IN[unit] ?? unit;
}
