/** Facts to numbers on a card: the gauge's unit first and limits rounded inward to what it reads. */
import type { DerivedFacts, Use } from '../facts/facts.ts';
import type { Leaf } from '../facts/leaf.ts';
import type { FactNumber } from '../facts/state.ts';
import { formatMass } from '../units/mass.ts';
import { decimalsKept, formatFraction, formatLimits, formatNumber, formatSecond } from '../units/format.ts';
import type { PrintedLimits } from '../units/limits.ts';
import type { Quantity } from '../units/quantity.ts';
import { secondUnit } from '../units/second.ts';
import { ceilCount } from '../units/round.ts';
import { readingUnit } from '../units/reading-unit.ts';
import { exactDecimals } from '../units/step.ts';
import { findUnit, unitById } from '../units/unit.ts';
import { kindName } from '../units/describe.ts';
import type { Figure, Limits, Name } from './card.ts';

/** What a gauge shows. */
export interface Gauge {
  readonly name: Name;
  readonly unit: string;
  /** Its smallest step, in the base unit of what it reads. */
  readonly step: number;
  /** U95 of a reading (expanded, k = 2), in the same unit; absent where the plant gives none. */
  readonly uncertainty?: number;
}

/** Step of limits repeated in the second unit: what a gauge of that unit commonly reads; common practice, no source. */
const SECOND_STEP: Readonly<Record<string, number>> = {
  in: 25_400,
  mm: 10_000,
  thou: 25_400,
  psi: 6_894.757293168361,
  kPa: 1000,
  lbf: 444.82216152605,
  '°F': 5 / 9,
  '°C': 1,
};

export type Ref = keyof DerivedFacts | Leaf<Quantity>;

/** The value behind a reference, and the id its trace starts at. */
export function valueOf(use: Use, ref: Ref): { readonly id: string; readonly q: Quantity } {
  return typeof ref === 'string' ? { id: ref, q: use.fact(ref) as Quantity } : { id: ref.id, q: use(ref) };
}

/** Decimals of an inch have no leading zero. */
const INCH = { leadingZero: false };

export interface FigureStyle {
  /** Decimals in the first unit of a computed number. A number as somebody wrote it is never printed shorter. */
  readonly decimals?: number;
  /** Inches as a fraction where one is true to 0.01 mm: stock, drills, saw lines, blades only. */
  readonly fraction?: boolean;
  /** At least this: rounded up in both units. */
  readonly least?: boolean;
  /** No less than this: rounded down in both units. */
  readonly worst?: boolean;
  /** Not repeated in the other system. */
  readonly single?: boolean;
  /** Read in this unit, where that is not the usual one of its size. */
  readonly unit?: string;
  /** Decimals of the second unit, where the usual ones would show nothing. */
  readonly secondDecimals?: number;
  /** Repeated in this unit, where people at the gauge read another than the usual one. */
  readonly second?: string;
}

export function figure(use: Use, ref: Ref, style: FigureStyle = {}): Figure {
  const { id, q } = valueOf(use, ref);
  const read = inUnit(q, style.unit ?? readingUnit(q));
  return typeof ref === 'string'
    ? figureOf(id, read, computedDecimals(read, style), style)
    : figureOf(id, read, givenDecimals(read), { ...style, fraction: style.fraction ?? isOnRule(read) });
}

/** A number of the fact of that id, somewhere between two states of it, repeated in the other system. */
export function figureOfState(id: string, number: FactNumber, value: number): Figure {
  const q = inUnit({ ...number, value }, readingUnit({ ...number, value }));
  const most = q.kind !== 'length' ? Math.max(q.decimals, 1) : q.unit === 'in' ? 4 : 3;
  // Timber is bought in its own unit.
  const style = q.kind === 'timber-volume' ? { single: true } : {};
  // So fine that its second is no nought.
  const fine = q.kind === 'length' && q.unit === 'mm' && Math.abs(value) < HUNDREDTH_INCH;
  return figureOf(id, q, Math.min(exactDecimals(value, q.unit) ?? most, most), {
    ...style,
    ...(fine ? { secondDecimals: 4 } : {}),
  });
}

/** The same in a unit it is read in, as fine as it was. */
const inUnit = (q: Quantity, unit: string): Quantity =>
  unit === q.unit ? q : { ...q, unit, decimals: decimalsKept(q, unit) };

/** Of a size without limits, given in inches, that can be read off a rule: 1/4, not .25. */
const isOnRule = ({ unit, value, low }: Quantity): boolean =>
  unit === 'in' && low === undefined && formatFraction(value, 64).residualNm === 0;

/** The sentence says that it is a difference; a floor reads degrees. */
const printed = (unit: string): string => unit.replace(/^Δ/, '');

/** A quantity that is part of the fact of that id. */
export function figureOf(id: string, q: Quantity, decimals: number, style: FigureStyle = {}): Figure {
  const first = { kind: 'figure', fact: id, text: text(q, q.unit, decimals, style), unit: printed(q.unit) } as const;
  const unit = style.second ?? secondUnit(q.unit);
  if (style.single || unit === undefined) return first;
  // A mass is read in pounds and whole ounces.
  if (q.unit === 'kg') return { ...first, second: { text: formatMass(q.value).lbOz, unit: '' } };
  return {
    ...first,
    second: {
      text: text(q, unit, style.secondDecimals ?? secondDecimals(q, unit, decimals), style),
      unit: printed(unit),
    },
  };
}

/**
 * A number somebody gave has the decimals it needs: `12 ±0.5` and `11.5..12.5` are the same number, and read alike, and so
 * do 1.50 cm and 15 mm.
 */
const givenDecimals = (q: Quantity): number => exactDecimals(q.value, q.unit) ?? q.decimals;

/** The next reading of that many decimals that is no smaller, in the base unit. */
function roundUp(value: number, unitId: string, decimals: number): number {
  const step = unitById(unitId).toBase(1) / 10 ** decimals;
  return ceilCount(value, step) * step;
}

/** The style counts in metric units; an inch takes one more for the same fineness. */
function computedDecimals(q: Quantity, style: FigureStyle): number {
  const inch = q.unit === 'in';
  if (style.decimals !== undefined) return style.decimals + (inch ? 1 : 0);
  const exact = exactDecimals(q.value, q.unit);
  // What came of fractions has the decimals of none.
  const written = q.denominator === undefined ? q.decimals : 4;
  return Math.min(written, exact ?? written, inch ? 4 : 3);
}

function text(q: Quantity, unit: string, decimals: number, style: FigureStyle): string {
  if (unit === 'in' && style.fraction) {
    const { text: fraction, residualNm } = formatFraction(q.value, 64);
    if (Math.abs(residualNm) <= 10_000) return fraction;
    return formatNumber(q.value, unit, Math.max(3, unit === q.unit ? decimals : 0), INCH);
  }
  const value = style.least
    ? roundUp(q.value, unit, decimals)
    : style.worst
      ? -roundUp(-q.value, unit, decimals)
      : q.value;
  return formatNumber(value, unit, value === 0 ? 0 : decimals, unit === 'in' && value !== 0 ? INCH : {});
}

const TENTH_INCH = 2_540_000;
const HUNDREDTH_INCH = 254_000;

/** One inch is 25.4 mm: a decimal more or two keeps the same fineness. */
function secondDecimals({ kind, value }: Quantity, unit: string, decimals: number): number {
  if (kind === 'length' && unit === 'in') return Math.max(decimals + 1, Math.abs(value) < TENTH_INCH ? 3 : 2);
  if (kind === 'length') return Math.min(Math.max(decimals - 1, 1), 2);
  if (unit === 'inHg' || kind === 'mass' || kind === 'area' || kind === 'timber-volume') return decimals + 1;
  return decimals;
}

export type LimitsOnCard =
  | {
      readonly ok: true;
      readonly limits: Limits;
      readonly counts: number;
      /** The limits drawn in by the gauge's uncertainty; 'nothing' where no reading of it is left between them. */
      readonly proven?: Drawn | 'nothing';
    }
  | { readonly ok: false; readonly why: string };

/** Limits a reading must lie inside to be proven in. */
export type Drawn = NonNullable<Limits['acceptance']>;

/** Limits as this gauge reads them, and inward again in the second unit. */
export function limits(use: Use, ref: Ref, gauge: Gauge): LimitsOnCard {
  const { id, q } = valueOf(use, ref);
  const unit = findUnit(gauge.unit);
  if (unit?.kind !== q.kind) return { ok: false, why: `it shows ${gauge.unit}, not ${kindName(q.kind)}` };
  const first = formatLimits(q, { unit: gauge.unit, step: gauge.step });
  if (!first.ok) return { ok: false, why: first.text };
  const { low, high, target, counts } = first;
  const second = secondLimits(first);
  return {
    ok: true,
    counts,
    limits: { kind: 'limits', fact: id, low, high, target, unit: first.unit, ...(second ? { second } : {}) },
    ...(gauge.uncertainty === undefined ? {} : { proven: drawnIn(q, gauge, gauge.uncertainty) }),
  };
}

/**
 * Lower limit + U and upper limit − U, then inward to the step of the gauge: whatever reads inside is inside, however far
 * the gauge is off within its U95. Source: ISO 14253-1, proof of conformity.
 */
function drawnIn(q: Quantity, { unit, step }: Gauge, uncertainty: number): Drawn | 'nothing' {
  const { low, high } = q;
  if (low === undefined || high === undefined || low + uncertainty > high - uncertainty) return 'nothing';
  const drawn = formatLimits({ ...q, low: low + uncertainty, high: high - uncertainty }, { unit, step });
  if (!drawn.ok) return 'nothing';
  const second = secondLimits(drawn);
  return { low: drawn.low, high: drawn.high, unit: drawn.unit, ...(second ? { second } : {}) };
}

function secondLimits(first: PrintedLimits): Limits['second'] {
  const unit = secondUnit(first.unit);
  const step = unit === undefined ? undefined : SECOND_STEP[unit];
  if (unit === undefined || step === undefined) return undefined;
  const second = formatSecond(first, { unit, step });
  return second.ok ? { low: second.low, high: second.high, unit } : undefined;
}
