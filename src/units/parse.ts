import { toBaseExactly } from './base.ts';
import type { Decimal } from './decimal.ts';
import { negated, sum } from './decimal.ts';
import { kindName } from './describe.ts';
import type { Span, UnitProblem } from './problem.ts';
import { isProblem, problem } from './problem.ts';
import type { Kind, Quantity } from './quantity.ts';
import { resolveUnit } from './resolve.ts';
import type { ScannedNumber, ScannedUnit } from './scan.ts';
import { scanNumber, scanUnit, shown, skipBlanks } from './scan.ts';
import type { Unit } from './unit.ts';
import { unitById } from './unit.ts';

export type { UnitProblem, UnitProblemCode } from './problem.ts';

export interface Wanted<K extends Kind = Kind> {
  readonly kind: K;
  /** Id of the unit a bare number is in; without it a bare number is a problem (of a count it never is). */
  readonly defaultUnit?: string;
}

export type Parsed<K extends Kind = Kind> =
  { readonly ok: true; readonly quantity: Quantity<K> } | { readonly ok: false; readonly problem: UnitProblem };

/** A text cut into its numbers and units, not yet converted. `pair` are the ends of a range or the two deviations. */
interface Cut {
  readonly nominal?: ScannedNumber;
  readonly pair?: readonly [ScannedNumber, ScannedNumber];
  readonly shape: 'plain' | 'plus-minus' | 'deviations' | 'range';
  readonly units: readonly ScannedUnit[];
}

/**
 * Reads a quantity as people write it: `12.50 mm`, `17.50 ±0.10`, `17.50 +/-0.10 mm`, `17.50 +0.3/-0.1`,
 * `17.4..17.6 mm`, `1-3/4 in ±1/64`, `3/64"`. A unit stands after any of the numbers and holds for all. A deviation of a
 * temperature is a difference. Conversion is exact for lengths; see `toBaseExactly` for how fine and large they may be.
 */
export function parseQuantity<K extends Kind>(text: string, want: Wanted<K>): Parsed<K> {
  const read = readCut(text);
  if (isProblem(read)) return { ok: false, problem: read };
  const unit = unitOf(read, want, text);
  if (isProblem(unit)) return { ok: false, problem: unit };
  const bad = misusedFraction(read, unit);
  if (bad) return { ok: false, problem: bad };
  const quantity = quantityOf(read, unit, want.kind, text);
  return isProblem(quantity) ? { ok: false, problem: quantity } : { ok: true, quantity };
}

/** No quantity is longer, and the scanner may look ahead from every character. */
const LONGEST_TEXT = 200;

function readCut(text: string): Cut | UnitProblem {
  if (text.length > LONGEST_TEXT) {
    const what = `A text of ${text.length} characters is no quantity.`;
    return problem(
      'number-unreadable',
      { from: 0, to: text.length },
      what,
      'Write one quantity, as in 17.50 ±0.10 mm.',
    );
  }
  const first = scanNumber(text, 0);
  if (isProblem(first)) return first;
  const unit = scanUnit(text, first.to);
  const at = skipBlanks(text, unit.to);
  const rest = text.slice(at);
  if (rest === '') return { nominal: first, shape: 'plain', units: [unit] };
  if (rest.startsWith('..')) return readPair(text, at + 2, { range: first, units: [unit] });
  const plusMinus = /^(?:±|\+\s*\/?\s*[-\u2212])/.exec(rest);
  if (plusMinus) return readPlusMinus(text, at + plusMinus[0].length, first, unit);
  return readPair(text, at, { nominal: first, units: [unit] });
}

function readPlusMinus(text: string, at: number, nominal: ScannedNumber, unit: ScannedUnit): Cut | UnitProblem {
  const size = scanNumber(text, at);
  if (isProblem(size)) return size;
  if (size.signed) {
    return problem('number-unreadable', size, 'The number after ± has a sign of its own.', 'Write it without a sign.');
  }
  const own = scanUnit(text, size.to);
  const less = { ...size, value: negated(size.value) };
  return leftOver(text, own.to) ?? { nominal, pair: [less, size], shape: 'plus-minus', units: [unit, own] };
}

type Begun =
  | { readonly range: ScannedNumber; readonly units: readonly ScannedUnit[] }
  | { readonly nominal: ScannedNumber; readonly units: readonly ScannedUnit[] };

/** The rest of a range, or both deviations of a nominal. */
function readPair(text: string, at: number, begun: Begun): Cut | UnitProblem {
  const one = scanNumber(text, at);
  if (isProblem(one)) return one;
  const oneUnit = scanUnit(text, one.to);
  if ('range' in begun) {
    const units = [...begun.units, oneUnit];
    return leftOver(text, oneUnit.to) ?? { pair: [begun.range, one], shape: 'range', units };
  }
  const slash = skipBlanks(text, oneUnit.to);
  if (text[slash] !== '/' || !one.signed) return loneDeviation(text, one, begun.nominal);
  const two = scanNumber(text, slash + 1);
  if (isProblem(two)) return two;
  const twoUnit = scanUnit(text, two.to);
  const units = [...begun.units, oneUnit, twoUnit];
  return leftOver(text, twoUnit.to) ?? { nominal: begun.nominal, pair: [one, two], shape: 'deviations', units };
}

function loneDeviation(text: string, one: ScannedNumber, nominal: ScannedNumber): UnitProblem {
  const span = { from: one.from, to: text.trimEnd().length };
  const [a, b] = [text.slice(nominal.from, nominal.to), text.slice(one.from, one.to).replace(/^[+\-\u2212]\s*/, '')];
  const what = `'${shown(text.slice(one.from).trimEnd())}' is a second number, but neither ± nor both deviations.`;
  return problem('number-unreadable', span, what, `Write ${a} ±${b}, ${a} +${b}/-0, or a range as in 17.4..17.6.`);
}

function leftOver(text: string, at: number): UnitProblem | undefined {
  const from = skipBlanks(text, at);
  const to = text.trimEnd().length;
  if (from >= to) return undefined;
  const what = `'${shown(text.slice(from, to))}' is left over after the quantity.`;
  return problem('number-unreadable', { from, to }, what, 'Write one quantity, with limits once.');
}

/** The one unit of all numbers. */
function unitOf(cut: Cut, want: Wanted, text: string): Unit | UnitProblem {
  const written = cut.units.filter((u) => u.text !== '');
  let unit: Unit | undefined;
  for (const piece of written) {
    // The unit of a deviation of a temperature may be written as the difference it is.
    const isDeviation = unit !== undefined && cut.shape !== 'range';
    const next = resolveUnit(piece, want.kind, isDeviation);
    if (isProblem(next)) return next;
    if (unit !== undefined && !sameScale(unit, next)) return mixed(piece, unit, next);
    unit ??= next;
  }
  if (unit !== undefined) return unit;
  if (want.defaultUnit !== undefined) return unitById(want.defaultUnit);
  if (want.kind === 'count') return unitById('');
  const end = text.trimEnd().length;
  const what = `A unit is missing: ${kindName(want.kind)} is wanted.`;
  return problem('unit-missing', { from: end, to: end }, what, 'Write the unit after the number.');
}

function sameScale(a: Unit, b: Unit): boolean {
  return a.id === b.id || (a.kind === 'temperature' && b.kind === 'temperature-difference' && `Δ${a.id}` === b.id);
}

function mixed(piece: Span, a: Unit, b: Unit): UnitProblem {
  const what = `The numbers are in different units, ${a.symbol} and ${b.symbol}.`;
  return problem('units-mixed', piece, what, `Write all of them in the same unit (${a.symbol}).`);
}

function misusedFraction(cut: Cut, unit: Unit): UnitProblem | undefined {
  if (unit.id === 'in') return undefined;
  const fraction = [cut.nominal, ...(cut.pair ?? [])].find((n) => n?.denominator !== undefined);
  if (fraction === undefined) return undefined;
  const what = `A fraction is read in inches only, but the unit here is ${unit.symbol === '' ? 'none' : unit.symbol}.`;
  return problem('number-unreadable', fraction, what, 'Write a decimal, or add "in" if inches are meant.');
}

function quantityOf<K extends Kind>(cut: Cut, unit: Unit, kind: K, text: string): Quantity<K> | UnitProblem {
  const { nominal, pair, shape } = cut;
  const heads = shape === 'range' ? (pair ?? []) : nominal ? [nominal] : [];
  const decimals = Math.max(...heads.map((h) => h.value.scale));
  const common = { kind, unit: unit.id, decimals, ...denominatorOf(cut, heads) };
  const value = nominal && based(nominal.value, unit, nominal);
  if (typeof value === 'object') return value;
  if (pair === undefined) return { ...common, value: value ?? 0 };
  const limits = limitsOf(nominal, pair, unit, text);
  if (isProblem(limits)) return limits;
  const form = shape === 'range' || shape === 'deviations' ? { form: shape } : {};
  return { ...common, value: value ?? (limits.low + limits.high) / 2, ...limits, ...form };
}

function limitsOf(
  nominal: ScannedNumber | undefined,
  [a, b]: readonly [ScannedNumber, ScannedNumber],
  unit: Unit,
  text: string,
): { low: number; high: number } | UnitProblem {
  const [one, two] = [a, b].map((n) => based(nominal ? sum(nominal.value, n.value) : n.value, unit, n));
  if (typeof one !== 'number') return one!;
  if (typeof two !== 'number') return two!;
  const span = { from: Math.min(a.from, b.from), to: Math.max(a.to, b.to) };
  if (nominal === undefined) return one <= two ? { low: one, high: two } : crossedRange(span, text, a, b);
  const [low, high] = [a.value.digits, b.value.digits];
  if ((low > 0n && high > 0n) || (low < 0n && high < 0n)) return oneSided(span);
  return { low: Math.min(one, two), high: Math.max(one, two) };
}

function crossedRange(span: Span, text: string, a: Span, b: Span): UnitProblem {
  const [high, low] = [a, b].map((n) => text.slice(n.from, n.to));
  const what = `The range starts at ${high}, above its end at ${low}.`;
  return problem('limits-crossed', span, what, `Write the lower limit first: ${low}..${high}.`);
}

function oneSided(span: Span): UnitProblem {
  const what = 'Both deviations lie on the same side, so the nominal itself is outside its limits.';
  return problem('limits-crossed', span, what, 'Write the two limits as a range, as in 17.4..17.6.');
}

function based(value: Decimal, unit: Unit, span: Span): number | UnitProblem {
  const base = toBaseExactly(value, unit);
  if (base === 'too-large') {
    return problem(
      'number-too-large',
      span,
      'This number is larger than anything made here.',
      'Check its digits and unit.',
    );
  }
  if (base === 'too-fine') {
    const fine = unit.kind === 'length' ? 'It is finer than half a nanometre.' : 'It has more digits than can be kept.';
    return problem('number-too-fine', span, fine, 'Write fewer decimals.');
  }
  return base;
}

/** Kept where the nominal, or both ends of a range, could be read off a rule: fractions and whole numbers. */
function denominatorOf(cut: Cut, heads: readonly ScannedNumber[]): { denominator?: number } {
  const all = [...heads, ...(cut.pair ?? [])].flatMap((n) => n.denominator ?? []).filter((d) => d > 1);
  const onRule = heads.every((h) => h.denominator !== undefined || h.value.scale === 0);
  return onRule && all.length > 0 ? { denominator: Math.max(...all) } : {};
}
