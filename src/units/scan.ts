import type { Decimal } from './decimal.ts';
import { dyadic, negated, readDecimal, sum } from './decimal.ts';
import type { Span, UnitProblem } from './problem.ts';
import { problem } from './problem.ts';

/** One number of a text: its exact value, where it stands, and its denominator where it was written as a fraction. */
export interface ScannedNumber extends Span {
  readonly value: Decimal;
  readonly signed: boolean;
  readonly denominator?: number;
}

/** The piece of text after a number that should be its unit; empty where none is written. */
export interface ScannedUnit extends Span {
  readonly text: string;
}

const NOT_FINITE = /[+\-\u2212]?\s*(?:\.?nan|\.?inf(?:inity)?|∞)(?![a-z])/iy;
const SIGN = /([+\-\u2212]?)\s*/y;
const FRACTION = /(?:(\d+)(?:-|\s+))?(\d+)\s*\/\s*(\d+)/y;
const DECIMAL = /\d+\.\d+|\d+|\.\d+/y;
const TAIL = /[\d.,_]*[eE][+\-\u2212]?\d+|[xX][0-9a-fA-F]+|[,_][\d.,_]*|\.(?!\.)[\d.,_]*|\.\.\.+/y;
/** A unit runs up to a tolerance, a range or the end. */
const UNIT = /(?:(?!\s*(?:±|\+|[-\u2212]\s*[\d.]|\/\s*[+\-\u2212]|\.\.)).)*/suy;
/** More digits than any quantity needs, and no work for a text of a million. */
const MOST_DIGITS = 40;

function match(pattern: RegExp, text: string, at: number): RegExpExecArray | undefined {
  const sticky = new RegExp(pattern);
  sticky.lastIndex = at;
  return sticky.exec(text) ?? undefined;
}

export function skipBlanks(text: string, at: number): number {
  return match(/\s*/y, text, at)![0].length + at;
}

/** Reads the number that should start at `at`, blanks aside. */
export function scanNumber(text: string, at: number): ScannedNumber | UnitProblem {
  const from = skipBlanks(text, at);
  const infinite = match(NOT_FINITE, text, from);
  if (infinite) {
    const span = { from, to: from + infinite[0].length };
    return problem(
      'number-not-finite',
      span,
      `'${infinite[0]}' is not a number that can be cut or set.`,
      'Write a number.',
    );
  }
  const sign = match(SIGN, text, from)!;
  const start = from + sign[0].length;
  const fraction = match(FRACTION, text, start);
  const found = fraction ?? match(DECIMAL, text, start);
  if (!found) return noNumber(text, from);
  const to = start + found[0].length;
  const tail = match(TAIL, text, to);
  if (tail) return badTail(text, { from, to: to + tail[0].length }, tail[0]);
  if (found[0].length > MOST_DIGITS) return tooLong({ from, to });
  const scanned = fraction ? fractionValue(fraction, { from, to }) : { value: readDecimal(found[0]) };
  if ('code' in scanned) return scanned;
  const value = sign[1] === '' || sign[1] === '+' ? scanned.value : negated(scanned.value);
  return { ...scanned, value, signed: sign[1] !== '', from, to };
}

function fractionValue(
  [, whole, top, bottom]: RegExpExecArray,
  span: Span,
): { value: Decimal; denominator: number } | UnitProblem {
  const n = Number(top);
  const d = Number(bottom);
  if (![2, 4, 8, 16, 32, 64, 128].includes(d)) {
    const text = `A fraction of 1/${bottom} is not on an inch rule.`;
    return problem('number-unreadable', span, text, 'Use halves to 128ths (2, 4, 8, 16, 32, 64, 128), or a decimal.');
  }
  if (whole !== undefined && n >= d) {
    const text = `'${whole}-${top}/${bottom}' has a fraction of one or more after a whole number.`;
    return problem('number-unreadable', span, text, 'Carry it into the whole number, as in 1-3/4.');
  }
  const part = dyadic(BigInt(n), d);
  const value = whole === undefined ? part : sum({ digits: BigInt(whole), scale: 0 }, part);
  return { value, denominator: reduced(n, d) };
}

function reduced(n: number, d: number): number {
  let [top, bottom] = [n, d];
  while (bottom > 1 && top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  return bottom;
}

function noNumber(text: string, from: number): UnitProblem {
  const rest = text.slice(from).trimEnd();
  const what = rest === '' ? 'A number is missing here.' : `'${shown(rest)}' does not start with a number.`;
  const span = { from, to: from + rest.length };
  return problem('number-unreadable', span, what, 'Write digits with a decimal point, as in 12.50 mm.');
}

function badTail(text: string, span: Span, tail: string): UnitProblem {
  const written = shown(text.slice(span.from, span.to));
  const refuse = (what: string, mend: string) => problem('number-unreadable', span, what, mend);
  if (/^[^eE]*[eE]/.test(tail) && !/^[xX]/.test(tail)) {
    return refuse(`'${written}' is written with an exponent, easily misread on the floor.`, 'Write the number out.');
  }
  if (/^[xX]/.test(tail)) return refuse(`'${written}' is not a decimal number.`, 'Write it in decimal digits.');
  if (/^[,_]/.test(tail)) {
    const mend = 'Write decimals after a point (12.5) and thousands without a mark (18000).';
    return refuse(`'${written}' has a mark that can be read as decimals or as thousands.`, mend);
  }
  return refuse(
    `'${written}' has a point with no digits of its own.`,
    'Write as in 12.5, and a range as in 17.4..17.6.',
  );
}

function tooLong(span: Span): UnitProblem {
  return problem('number-too-large', span, 'This number has too many digits.', `Write at most ${MOST_DIGITS} of them.`);
}

/** Reads the text that should be a unit. */
export function scanUnit(text: string, at: number): ScannedUnit {
  const from = skipBlanks(text, at);
  const found = match(UNIT, text, from)![0].trimEnd();
  return { text: found, from, to: from + found.length };
}

/** A piece of a user's text, short enough for a message. */
export function shown(piece: string): string {
  return piece.length > 30 ? `${piece.slice(0, 30)}…` : piece;
}
