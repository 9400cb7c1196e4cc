/** Numbers in the text of findings. */
import type { Facts } from '../facts/facts.ts';
import type { Hand } from '../facts/subject.ts';
import { inWords } from '../facts/in-words.ts';
import { formatNumber, formatPlain, withUnit } from '../units/format.ts';
import type { Cause, Kind, Length, Quantity } from '../units/quantity.ts';

/** A length as read by people: `0.18 mm`, two decimals in mm and three in inches unless more were written. */
export function say(q: { readonly unit: string; readonly decimals: number }, nm: number): string {
  return withUnit(formatNumber(nm, q.unit, Math.max(q.decimals, q.unit === 'in' ? 3 : 2)), q.unit);
}

/** `±0.40 mm`, or `−0.10/+0.30 mm` where the two sides differ. */
export function saySpread(q: { readonly unit: string; readonly decimals: number }, down: number, up: number): string {
  return down === up ? `±${say(q, up)}` : `−${say(q, down)} and +${say(q, up)}`;
}

/** Half width of one cause's share. */
export const halfOf = (cause: Cause): number => (Math.abs(cause.sensitivity) * (cause.plus - cause.minus)) / 2;

/** `±0.12 mm (machined body, crown) + ±0.08 mm (router, error in depth)`: what makes a stack, largest first, each once. */
export function sayCauses(q: Length, causes: readonly Cause[]): string {
  const halves = new Map<string, number>();
  for (const cause of causes) {
    const name = inWords(cause.cause);
    halves.set(name, (halves.get(name) ?? 0) + halfOf(cause));
  }
  const shown = [...halves]
    .toSorted(([, a], [, b]) => b - a)
    .map(([name, half]) => ({ name, said: `±${say(q, half)}` }));
  // What reads as nothing says nothing, unless there is no more than that.
  const told = shown.filter(({ said }) => /[1-9]/.test(said));
  return (told.length > 0 ? told : shown.slice(0, 1)).map(({ name, said }) => `${said} (${name})`).join(' + ');
}

/** `, and that may be off by ±0.12 mm (…) + …`: what a size as drawn may be short or over by; nothing where it has no limits. */
export const offBy = (q: Length): string =>
  q.causes && q.causes.length > 0 ? `, and that may be off by ${sayCauses(q, q.causes)}` : '';

/**
 * `0.10 mm apart as drawn, and that may be off by ±0.30 mm (…): 0.20 mm over each other at worst`. `side` says on which
 * side of nothing a size lies, so that none is said with a minus sign. `place`: where, for a reader who looks for it.
 */
export function drawnAndWorst(q: Length, side: (size: string, past: boolean) => string, place = ''): string {
  const on = (nm: number): string => side(say(q, Math.abs(nm)), nm < 0);
  const causes = offBy(q);
  return `${on(q.value)} as drawn${place}${causes}${causes === '' ? '' : `: ${on(q.low ?? q.value)} at worst`}`;
}

/** `±0.10 mm (…) + ±0.08 mm (…) = ±0.18 mm`; of a single cause its own share is the whole. */
export function sayStack(q: Length, causes: readonly Cause[], whole: string): string {
  const parts = sayCauses(q, causes);
  return parts.includes(' + ') ? `${parts} = ${whole}` : parts;
}

/** The lines of the largest of them, for the notes: at least a quarter of the whole. */
export function notesOfCauses(causes: readonly Cause[]): { readonly at: string; readonly text: string }[] {
  const halves = new Map<string, number>();
  for (const cause of causes) {
    const id = cause.cause.replace(/#.*/, '');
    halves.set(id, (halves.get(id) ?? 0) + halfOf(cause));
  }
  const whole = [...halves.values()].reduce((sum, half) => sum + half, 0);
  return [...halves]
    .filter(([, half]) => half > 0 && half >= whole / 4)
    .map(([at]) => ({ at, text: `how far that may be off: ${inWords(at)}` }));
}

/** `x 12.5, y -8.0 mm`: a point of a drawing as the spec draws it, for the right hand. */
export const sayPoint = ({ x, y }: { x: number; y: number }, hand: Hand): string =>
  `x ${formatNumber(Math.round((hand === 'left' ? -x : x) * 1e6), 'mm', 1)}, y ${formatNumber(Math.round(y * 1e6), 'mm', 1)} mm`;

/** With a capital in front. */
export const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

/** A piece of text as a sentence: a capital in front, a full stop behind. */
export const sentence = (text: string): string => `${capital(text)}.`;

/** A share as people read it: `8.5 %`. */
export const sayShare = (share: number, decimals = 1): string => withUnit(formatNumber(share, '%', decimals), '%');

/** `between 7.5 % and 9.5 %`; `at 8.5 %` where both ends read the same. */
export function sayBetween(low: number, high: number, decimals = 1): string {
  const [from, to] = [sayShare(low, decimals), sayShare(high, decimals)];
  return from === to ? `at ${from}` : `between ${from} and ${to}`;
}

/** What a fact is called where it prints, in quotes; its id in words where it was given no name. */
export function sayFact(facts: Facts, id: string): string {
  const label = facts.fact(id)?.label ?? id;
  return `"${label === id ? inWords(id) : label}"`;
}

/** Another value of what a quantity is of, in its unit and to its decimals: `14.0 MPa`. */
export const sayAs = <K extends Kind>(q: Quantity<K>, value: number, decimals = q.decimals): string =>
  formatPlain({ ...q, value }, q.unit, decimals);
