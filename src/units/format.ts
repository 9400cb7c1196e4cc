import type { Direction } from './base.ts';
import { exactDecimal, roundedDecimal } from './base.ts';
import type { Decimal, NumberStyle } from './decimal.ts';
import { decimalText, difference, rescaled, shortened } from './decimal.ts';
import { decimalAsFraction } from './fraction.ts';
import type { Quantity } from './quantity.ts';
import type { Unit } from './unit.ts';
import { unitById } from './unit.ts';

export type { NumberStyle } from './decimal.ts';
export { formatFraction, formatResidual } from './fraction.ts';
export { formatLimits, formatSecond } from './limits.ts';
export { formatMass } from './mass.ts';

/** Decimals added to a derived value that no short decimal of its unit gives exactly. */
const SPARE_DECIMALS = 2;
const MOST_SPARE = 12;

/** `text` with the symbol of its unit: `12.5 mm`, `45°`, `3`. */
export function withUnit(text: string, unitId: string): string {
  const { symbol } = unitById(unitId);
  if (symbol === '') return text;
  return symbol === '°' ? text + symbol : `${text} ${symbol}`;
}

/**
 * The authored form: `parseQuantity` reads back a quantity deeply equal to one it gave. A derived value that has no
 * exact decimal in its unit is printed with two decimals more than written, its limits inward; for a gauge print with
 * `formatLimits`. One limit alone has no authored form and stands in brackets.
 */
export function formatQuantity(q: Quantity, style: NumberStyle = {}): string {
  const unit = unitById(q.unit);
  const text = (d: Decimal) => numberText(d, q, style);
  if (q.low === undefined && q.high === undefined) return withUnit(text(nominalOf(q, unit)), q.unit);
  if (q.low === undefined || q.high === undefined) return oneLimit(q, unit, text);
  const { nominal, low, high } = decimalsOfLimits({ ...q, low: q.low, high: q.high }, unit);
  if (q.form === 'range') return withUnit(`${text(low)}..${text(high)}`, q.unit);
  const plus = trimmed(difference(high, nominal), q.decimals);
  const minus = trimmed(difference(nominal, low), q.decimals);
  const even = q.form === undefined && plus.digits === minus.digits && plus.scale === minus.scale;
  if (even) return withUnit(`${text(nominal)} ±${text(plus)}`, q.unit);
  const [up, down] = [signed(plus, text), signed({ digits: -minus.digits, scale: minus.scale }, text, '-')];
  return withUnit(`${text(nominal)} ${up}/${down}`, q.unit);
}

function signed(d: Decimal, text: (d: Decimal) => string, zeroSign = '+'): string {
  if (d.digits < 0n) return text(d);
  return (d.digits === 0n ? zeroSign : '+') + text(d);
}

function oneLimit(q: Quantity, unit: Unit, text: (d: Decimal) => string): string {
  const [limit, sign, direction] =
    q.low === undefined ? ([q.high, '≤', 'down'] as const) : ([q.low, '≥', 'up'] as const);
  const shown = nearDecimal(limit ?? q.value, unit, q.decimals, SPARE_DECIMALS, direction);
  return withUnit(`${text(nominalOf(q, unit))} (${sign} ${text(shown)})`, q.unit);
}

function nominalOf(q: Quantity, unit: Unit, spare = SPARE_DECIMALS): Decimal {
  return nearDecimal(q.value, unit, q.decimals, spare, 'nearest');
}

/** The exact decimal where there is one, else one rounded with spare decimals. */
function nearDecimal(value: number, unit: Unit, decimals: number, spare: number, direction: Direction): Decimal {
  const exact = exactDecimal(value, unit, decimals);
  return exact ?? shortened(roundedDecimal(value, unit, decimals + spare, direction), decimals);
}

interface ThreeDecimals {
  readonly nominal: Decimal;
  readonly low: Decimal;
  readonly high: Decimal;
}

/** Limits so close that nothing lies between them at the spare decimals get one more. */
function decimalsOfLimits(
  q: Quantity & { low: number; high: number },
  unit: Unit,
  spare = SPARE_DECIMALS,
): ThreeDecimals {
  const [up, down] = q.low === q.high ? (['nearest', 'nearest'] as const) : (['up', 'down'] as const);
  const nominal = nominalOf(q, unit, spare);
  const low = nearDecimal(q.low, unit, q.decimals, spare, up);
  const high = nearDecimal(q.high, unit, q.decimals, spare, down);
  const crossed = difference(high, low).digits < 0n && spare < MOST_SPARE;
  return crossed ? decimalsOfLimits(q, unit, spare + 1) : { nominal, low, high };
}

/** Down to the written decimals, so that `17.50 ±0.1` shows as `±0.10` and `17.5 ±0.05` keeps its two. */
function trimmed(d: Decimal, decimals: number): Decimal {
  return rescaled(shortened(d, decimals), decimals);
}

function numberText(d: Decimal, q: Quantity, style: NumberStyle): string {
  const fraction = q.denominator === undefined ? undefined : decimalAsFraction(d, q.denominator);
  return fraction ?? decimalText(d, style);
}

/** A base value as a number in a unit, rounded to nearest (ties away from zero); no unit, no sign on zero. */
export function formatNumber(valueBase: number, unitId: string, decimals: number, style: NumberStyle = {}): string {
  return decimalText(roundedDecimal(valueBase, unitById(unitId), decimals, 'nearest'), style);
}

/**
 * A value without its limits, with its unit. In another unit it keeps as many digits as the original bears: the last
 * digit printed is the largest power of ten that is no coarser than the original's last digit (NIST SP 811 B.7.2,
 * whose example 36 ft gives 11.0 m). `decimals` overrides that.
 */
export function formatPlain(q: Quantity, unitId = q.unit, decimals?: number, style: NumberStyle = {}): string {
  const places = decimals ?? (unitId === q.unit ? q.decimals : decimalsKept(q, unitId));
  return withUnit(formatNumber(q.value, unitId, places, style), unitId);
}

/** Decimals that a number has in another unit, to be as fine as it was. */
export function decimalsKept({ unit, decimals }: Pick<Quantity, 'unit' | 'decimals'>, toUnit: string): number {
  const [from, to] = [unitById(unit), unitById(toUnit)];
  const lastDigit = (10 ** -decimals * from.num * to.den) / (from.den * to.num);
  // Powers of ten apart, as m to mm, the logarithm is whole but for a hair.
  return Math.max(0, Math.ceil(-Math.log10(lastDigit) - 1e-9));
}
