import type { NumberStyle } from './decimal.ts';
import { decimalText } from './decimal.ts';
import { roundedDecimal } from './base.ts';
import { nearestCount } from './round.ts';
import { unitById } from './unit.ts';

/** A mass in kg as printed on a card: kg to 10 g, and pounds with the nearest whole ounce. */
export function formatMass(massKg: number, style: NumberStyle = {}): { kg: string; lbOz: string } {
  const ounces = nearestCount(massKg, unitById('oz').toBase(1));
  const size = Math.abs(ounces);
  const sign = ounces < 0 ? '-' : '';
  return {
    kg: decimalText(roundedDecimal(massKg, unitById('kg'), 2, 'nearest'), style),
    lbOz: `${sign}${Math.floor(size / 16)} lb ${size % 16} oz`,
  };
}
