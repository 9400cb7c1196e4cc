import type { Decimal, NumberStyle } from './decimal.ts';
import { decimalText } from './decimal.ts';
import type { Quantity } from './quantity.ts';
import { inwardCounts, nearestCount } from './round.ts';
import { stepDecimal } from './step.ts';
import type { Unit } from './unit.ts';
import { unitById } from './unit.ts';

/** What a gauge shows: its unit, and the smallest step it can be read to, in the base unit. */
export interface GaugeReading {
  readonly unit: string;
  readonly step: number;
}

export interface PrintedLimits {
  readonly ok: true;
  readonly unit: string;
  /** Rounded inward to the step; numbers without unit. */
  readonly low: string;
  readonly high: string;
  /** The nominal at the nearest reading inside. */
  readonly target: string;
  /** Readings inside, both limits included; ≥ 1. */
  readonly counts: number;
  /** The same three as printed, in the base unit. */
  readonly lowBase: number;
  readonly highBase: number;
  readonly targetBase: number;
}

export interface NoLimits {
  readonly ok: false;
  readonly reason: 'no-limits' | 'no-reading' | 'step-not-decimal';
  readonly text: string;
}

/**
 * Hard limits as a gauge can read them: rounded inward, lower up and upper down, to its step, printed in its unit with
 * the decimals of the step. Inches have no leading zero (`.422`), other units have, unless the style says otherwise.
 * 'no-reading': no reading of the gauge lies inside. 'step-not-decimal': the step has no short decimal in the unit.
 * Throws RangeError on a step ≤ 0.
 */
export function formatLimits(q: Quantity, gauge: GaugeReading, style: NumberStyle = {}): PrintedLimits | NoLimits {
  if (q.low === undefined || q.high === undefined) {
    return { ok: false, reason: 'no-limits', text: 'it has no two limits' };
  }
  return inward({ low: q.low, high: q.high, target: q.value }, gauge, style);
}

/**
 * Limits as printed, repeated in a second unit: inward once more, from the printed limits and not from the true ones, so
 * that they are never outside what stands first on the card.
 */
export function formatSecond(
  first: PrintedLimits,
  second: GaugeReading,
  style: NumberStyle = {},
): PrintedLimits | NoLimits {
  return inward({ low: first.lowBase, high: first.highBase, target: first.targetBase }, second, style);
}

interface Limits {
  readonly low: number;
  readonly high: number;
  readonly target: number;
}

function inward(limits: Limits, gauge: GaugeReading, style: NumberStyle): PrintedLimits | NoLimits {
  const unit = unitById(gauge.unit);
  const step = stepDecimal(gauge.step, unit);
  if (step === undefined) {
    return {
      ok: false,
      reason: 'step-not-decimal',
      text: `the step of this gauge has no short decimal in ${unit.symbol}`,
    };
  }
  // The readings of a thermometer are counted from the zero of its own scale.
  const zero = unit.offset === 0 ? 0 : unit.toBase(0);
  const range = inwardCounts(limits.low - zero, limits.high - zero, gauge.step);
  if (range === undefined) return { ok: false, reason: 'no-reading', text: 'no reading of this gauge lies inside' };
  const { first, last } = range;
  const target = Math.min(last, Math.max(first, nearestCount(limits.target - zero, gauge.step)));
  return {
    ok: true,
    unit: unit.id,
    counts: last - first + 1,
    ...printed([first, last, target], { unit, step, gauge, zero, style }),
  };
}

interface Printing {
  readonly unit: Unit;
  readonly step: Decimal;
  readonly gauge: GaugeReading;
  readonly zero: number;
  readonly style: NumberStyle;
}

function printed([first, last, target]: readonly [number, number, number], p: Printing) {
  const style = { leadingZero: p.unit.id !== 'in', ...p.style };
  const text = (count: number) => decimalText({ digits: p.step.digits * BigInt(count), scale: p.step.scale }, style);
  const base = (count: number) => count * p.gauge.step + p.zero;
  return {
    low: text(first),
    high: text(last),
    target: text(target),
    lowBase: base(first),
    highBase: base(last),
    targetBase: base(target),
  };
}
