import { exactDecimal } from './base.ts';
import type { Decimal } from './decimal.ts';
import { readDecimal, toNumber } from './decimal.ts';
import type { Unit } from './unit.ts';
import { unitById } from './unit.ts';

/**
 * A step held in the base unit, as a decimal of a unit: 25 400 nm in inches is 0.001. A step is a difference, so the
 * offset of a temperature plays no part. Undefined where it has no short decimal there (0.01 mm in inches).
 */
export function stepDecimal(step: number, unit: Unit): Decimal | undefined {
  if (unit.kind === 'length') return exactDecimal(step, unit, 0);
  const x = (step * unit.den) / unit.num;
  for (let scale = 0; scale <= 9; scale += 1) {
    const near = readDecimal(x.toFixed(scale));
    if (near.digits > 0n && Math.abs(toNumber(near) - x) <= 1e-12 * x) return near;
  }
  return undefined;
}

/** Decimals that show every reading of a step (base unit) in a unit: 0.05 mm has 2; undefined where none would. */
export function decimalsOf(step: number, unitId: string): number | undefined {
  return stepDecimal(step, unitById(unitId))?.scale;
}

/** The fewest decimals that give a base value exactly in a unit; undefined where no short decimal does. */
export const exactDecimals = (value: number, unitId: string): number | undefined =>
  exactDecimal(value, unitById(unitId), 0)?.scale;
