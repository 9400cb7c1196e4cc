import type { Decimal, NumberStyle } from './decimal.ts';
import { decimalText, tenTo } from './decimal.ts';
import { roundedDecimal } from './base.ts';
import { nearestCount } from './round.ts';
import { unitById } from './unit.ts';

const INCH_NM = 25_400_000;

export interface Fraction {
  /** `1 47/64`, reduced; without unit. */
  readonly text: string;
  /** Printed less true, in nm; at most 25.4e6 / (2 · denominator) either way. */
  readonly residualNm: number;
}

/**
 * Nearest inch fraction, for stock, drills, blades and saw allowances, never for a toleranced size: print its residual
 * beside it. `denominator` is a power of two, 1 to 128; ties go away from zero.
 */
export function formatFraction(valueNm: number, denominator: number): Fraction {
  if (!Number.isInteger(Math.log2(denominator)) || denominator > 128) throw new RangeError(`1/${denominator} in`);
  const step = INCH_NM / denominator;
  const parts = nearestCount(valueNm, step);
  return { text: partsText(BigInt(parts), BigInt(denominator), ' '), residualNm: parts * step - valueNm };
}

/** `+0.05 mm`: a signed difference, zero without a sign. */
export function formatResidual(residualNm: number, decimals = 2, style: NumberStyle = {}): string {
  const mm = roundedDecimal(residualNm, unitById('mm'), decimals, 'nearest');
  return `${mm.digits > 0n ? '+' : ''}${decimalText(mm, style)} mm`;
}

/** A decimal as `1-3/4` if it is a whole number of 1/denominator; else undefined. */
export function decimalAsFraction(a: Decimal, denominator: number): string | undefined {
  const parts = a.digits * BigInt(denominator);
  const ten = tenTo(a.scale);
  return parts % ten === 0n ? partsText(parts / ten, BigInt(denominator), '-') : undefined;
}

function partsText(parts: bigint, denominator: bigint, join: string): string {
  const size = parts < 0n ? -parts : parts;
  let [top, bottom] = [size % denominator, denominator];
  while (bottom > 1n && top % 2n === 0n) {
    top /= 2n;
    bottom /= 2n;
  }
  const whole = size / denominator;
  const rest = top === 0n ? [] : [`${top}/${bottom}`];
  const pieces = whole === 0n && rest.length > 0 ? rest : [`${whole}`, ...rest];
  return (parts < 0n ? '-' : '') + pieces.join(join);
}
