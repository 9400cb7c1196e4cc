/**
 * A decimal number as people write it, held exactly: digits · 10^-scale. `17.50` is { digits: 1750n, scale: 2 }.
 * An inch fraction of a power of two is a decimal too: 3/64 = 0.046875.
 */
export interface Decimal {
  readonly digits: bigint;
  /** Decimals, ≥ 0. Trailing zeros count, so the written precision is kept. */
  readonly scale: number;
}

/** 10^n, n ≥ 0. */
export function tenTo(n: number): bigint {
  return 10n ** BigInt(n);
}

/** Reads plain digits with at most one point (`12.50`, `.5`, `12`). The caller has checked the form. */
export function readDecimal(digits: string): Decimal {
  const point = digits.indexOf('.');
  if (point < 0) return { digits: BigInt(digits), scale: 0 };
  return { digits: BigInt(digits.slice(0, point) + digits.slice(point + 1)), scale: digits.length - point - 1 };
}

/** n/d as a decimal with the fewest digits, d a power of two. */
export function dyadic(n: bigint, d: number): Decimal {
  const scale = Math.log2(d);
  return shortened({ digits: (n * tenTo(scale)) / BigInt(d), scale });
}

export function negated(a: Decimal): Decimal {
  return { digits: -a.digits, scale: a.scale };
}

export function sum(a: Decimal, b: Decimal): Decimal {
  const scale = Math.max(a.scale, b.scale);
  return { digits: rescaled(a, scale).digits + rescaled(b, scale).digits, scale };
}

export function difference(a: Decimal, b: Decimal): Decimal {
  return sum(a, negated(b));
}

/** The same number with at least `scale` decimals. */
export function rescaled(a: Decimal, scale: number): Decimal {
  return scale <= a.scale ? a : { digits: a.digits * tenTo(scale - a.scale), scale };
}

/** The same number with trailing zeros dropped, down to `least` decimals. */
export function shortened(a: Decimal, least = 0): Decimal {
  let { digits, scale } = a;
  while (scale > least && digits % 10n === 0n) {
    digits /= 10n;
    scale -= 1;
  }
  return { digits, scale };
}

/** Nearest double. */
export function toNumber(a: Decimal): number {
  return Number(`${a.digits}e-${a.scale}`);
}

export interface NumberStyle {
  /** False prints `.422` for `0.422`, as toleranced inches are printed. Default true. */
  readonly leadingZero?: boolean;
  /** Default `.`; the one place where another language changes it. */
  readonly decimalMark?: string;
}

/** Prints all its decimals; zero never has a sign. */
export function decimalText(a: Decimal, style: NumberStyle = {}): string {
  const negative = a.digits < 0n;
  const digits = `${negative ? -a.digits : a.digits}`.padStart(a.scale + 1, '0');
  const whole = digits.slice(0, digits.length - a.scale);
  const sign = negative ? '-' : '';
  if (a.scale === 0) return sign + whole;
  const head = style.leadingZero === false && whole === '0' ? '' : whole;
  return `${sign}${head}${style.decimalMark ?? '.'}${digits.slice(-a.scale)}`;
}
