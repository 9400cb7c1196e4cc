import type { Decimal } from './decimal.ts';
import { rescaled, shortened, tenTo, toNumber } from './decimal.ts';
import { ceilCount, floorCount, nearestCount } from './round.ts';
import type { Unit } from './unit.ts';

/**
 * Between a decimal in a unit and a double in the base unit. A length goes over in whole-number arithmetic and arrives
 * exactly. Another kind arrives as the nearest doubles of its factor give it (a few 1e-16 relative), and its decimal is
 * got back by searching for the shortest one that lands on the same double.
 */
export type Direction = 'nearest' | 'up' | 'down';

/** Lengths up to 2^52 nm (4 500 km) keep their half nanometres in a double. */
const LARGEST_NM = 2 ** 52;
/** What a double of another kind gives back for certain, the 273.15 of a temperature added. */
const MOST_DIGITS = 12;
const MOST_DECIMALS = 9;

/**
 * Base value of a decimal in a unit. 'too-fine': a length that is no multiple of half a nanometre (1/128 in is), or more
 * than 9 decimals or 12 digits of another kind. 'too-large': past 2^52 nm, or 12 digits before the point.
 */
export function toBaseExactly(a: Decimal, unit: Unit): number | 'too-fine' | 'too-large' {
  return unit.kind === 'length' ? lengthToNm(a, unit) : otherToBase(a, unit);
}

function lengthToNm(a: Decimal, unit: Unit): number | 'too-fine' | 'too-large' {
  const halves = 2n * a.digits * BigInt(unit.num);
  const divisor = tenTo(a.scale);
  const half = halves / divisor;
  if (half > 2 * LARGEST_NM || half < -2 * LARGEST_NM) return 'too-large';
  return halves % divisor === 0n ? Number(half) / 2 : 'too-fine';
}

function otherToBase(a: Decimal, unit: Unit): number | 'too-fine' | 'too-large' {
  const digits = `${a.digits < 0n ? -a.digits : a.digits}`.length;
  if (digits - a.scale > MOST_DIGITS) return 'too-large';
  if (digits > MOST_DIGITS || a.scale > MOST_DECIMALS) return 'too-fine';
  return unit.toBase(toNumber(a));
}

/** The decimal with the fewest digits, but at least `least` decimals, that is exactly this base value; or undefined. */
export function exactDecimal(value: number, unit: Unit, least: number): Decimal | undefined {
  return unit.kind === 'length' ? exactLength(value, unit, least) : exactOther(value, unit, least);
}

function exactLength(valueNm: number, unit: Unit, least: number): Decimal | undefined {
  if (!Number.isInteger(valueNm * 2)) return undefined;
  const most = Math.max(least, 10);
  const scaled = BigInt(valueNm * 2) * tenTo(most);
  const divisor = 2n * BigInt(unit.num);
  if (scaled % divisor !== 0n) return undefined;
  return rescaled(shortened({ digits: scaled / divisor, scale: most }, least), least);
}

function exactOther(value: number, unit: Unit, least: number): Decimal | undefined {
  for (let scale = least; scale <= Math.max(least, MOST_DECIMALS); scale += 1) {
    const near = roundedDecimal(value, unit, scale, 'nearest');
    if (isSame(unit.toBase(toNumber(near)), value)) return near;
  }
  return undefined;
}

/** But for the last bits: 3.6 m/min and 3600 mm/min are one speed, and two doubles. */
const isSame = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-14 * Math.abs(b);

/**
 * Rounded to a number of decimals in the unit. Exact for a length (noise of derived lengths below 1/1024 nm aside); of
 * other kinds a number within 1e-9 relative of a last digit counts as that digit. Ties go away from zero.
 */
export function roundedDecimal(value: number, unit: Unit, scale: number, direction: Direction): Decimal {
  if (!Number.isFinite(value)) throw new RangeError(`cannot print ${value}`);
  const digits =
    unit.kind === 'length' ? lengthDigits(value, unit, scale, direction) : otherDigits(value, unit, scale, direction);
  return { digits, scale };
}

function otherDigits(value: number, unit: Unit, scale: number, direction: Direction): bigint {
  const step = 10 ** -scale;
  const x = unit.fromBase(value);
  return BigInt({ nearest: nearestCount, up: ceilCount, down: floorCount }[direction](x, step));
}

function lengthDigits(valueNm: number, unit: Unit, scale: number, direction: Direction): bigint {
  const top = BigInt(Math.round(valueNm * 1024)) * tenTo(scale);
  const bottom = 1024n * BigInt(unit.num);
  if (direction === 'down') return floorDivided(top, bottom);
  if (direction === 'up') return -floorDivided(-top, bottom);
  return top < 0n ? -floorDivided(-2n * top + bottom, 2n * bottom) : floorDivided(2n * top + bottom, 2n * bottom);
}

function floorDivided(top: bigint, bottom: bigint): bigint {
  const quotient = top / bottom;
  return top % bottom < 0n ? quotient - 1n : quotient;
}
