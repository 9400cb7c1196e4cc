/**
 * Rounding to the step of a gauge. Values and step are in the same unit, the base unit as a rule.
 *
 * Where both are multiples of a quarter (lengths in nm as written, their sums, differences and middles), the remainder
 * of a double is exact and so is the rounding. Elsewhere a quotient within 1e-9 relative of a whole number counts as that
 * number: 45 % / 0.1 % is 450 readings though the doubles say 449.99999999999994.
 */
const SNAP = 1e-9;
/** The window never grows past this part of a step, however many steps there are. */
const WIDEST_SNAP = 1e-3;

export interface Inward {
  readonly low: number;
  readonly high: number;
  /** Readings of the step that lie inside the limits, both ends included; ≥ 1. */
  readonly counts: number;
}

/** Whole steps in the value, rounded down. */
export function floorCount(value: number, step: number): number {
  checkStep(value, step);
  if (isQuarters(value) && isQuarters(step)) {
    const rest = value % step;
    const count = (value - rest) / step;
    return rest < 0 ? count - 1 : plainZero(count);
  }
  const quotient = value / step;
  const whole = Math.round(quotient);
  return plainZero(Math.abs(quotient - whole) <= snapWindow(quotient) ? whole : Math.floor(quotient));
}

/** Whole steps in the value, rounded up. */
export function ceilCount(value: number, step: number): number {
  return plainZero(-floorCount(-value, step));
}

/** Whole steps nearest to the value, ties away from zero. */
export function nearestCount(value: number, step: number): number {
  if (value < 0) return plainZero(-nearestCount(-value, step));
  const below = floorCount(value, step);
  if (isQuarters(value) && isQuarters(step)) return (value % step) * 2 >= step ? below + 1 : below;
  const quotient = value / step;
  // A tie of inexact doubles may miss the half by a hair; it still is a tie.
  return quotient - below >= 0.5 - snapWindow(quotient) ? below + 1 : below;
}

/**
 * The readings of a gauge that lie inside hard limits: the lower limit rounded up, the upper down, so that no reading
 * passed by the rounded limits is refused by the true ones (the rule of ASME A112.18.1/CSA B125.1 annex A (e)).
 * Undefined where no reading lies inside.
 */
export function roundInward(low: number, high: number, step: number): Inward | undefined {
  const range = inwardCounts(low, high, step);
  if (range === undefined) return undefined;
  const { first, last } = range;
  return { low: first * step, high: last * step, counts: last - first + 1 };
}

/** First and last whole number of steps inside the limits; undefined where there is none. */
export function inwardCounts(low: number, high: number, step: number): { first: number; last: number } | undefined {
  const first = ceilCount(low, step);
  const last = floorCount(high, step);
  return first <= last ? { first, last } : undefined;
}

/** Nearest multiple of the step, ties away from zero. */
export function roundNearest(value: number, step: number): number {
  return nearestCount(value, step) * step;
}

function checkStep(value: number, step: number): void {
  if (!(step > 0) || !Number.isFinite(step)) throw new RangeError(`a step of ${step}`);
  if (!Number.isFinite(value)) throw new RangeError(`cannot round ${value}`);
}

function snapWindow(quotient: number): number {
  return Math.min(WIDEST_SNAP, SNAP * Math.max(1, Math.abs(quotient)));
}

function isQuarters(x: number): boolean {
  return Number.isInteger(x * 4);
}

/** Minus zero to zero: it would print a sign and is not deeply equal to zero. */
function plainZero(x: number): number {
  return x === 0 ? 0 : x;
}
