/** Lines of a card in words: sentences filled with what the card gives, numbers kept apart so that they can be set as one. */
import type { Arg, Figure, Limits } from '../cards/card.ts';
import type { Finding, Place } from '../findings/finding.ts';
import { offer } from '../findings/nearest.ts';
import { inLanguage } from '../units/in-language.ts';
import { isSafety } from './safety-texts.ts';
import { PLACE, type Words } from './words.ts';

/** A stretch of text; a figure is a number with its unit and never broken over two lines. */
export interface Segment {
  readonly text: string;
  readonly figure?: true;
  /** In another language than the text around it. */
  readonly language?: string;
}

export type Tell = (finding: Finding) => void;

/** What an argument says. A sentence that is missing shows as its id in brackets, never as a blank, and is told. */
export function resolve(arg: Arg, words: Words, tell: Tell): Segment[] {
  if (arg.kind === 'figure') return figureSegments(arg, words);
  if (arg.kind === 'limits') return limitsSegments(arg, words, tell);
  if (arg.kind === 'line') return sentence(arg.say, arg.with, words, tell);
  if (arg.kind === 'series') {
    const between = { text: `${separator(words, arg.items)} ` };
    return arg.items.flatMap((item, i) => [...(i > 0 ? [between] : []), ...resolve(item, words, tell)]);
  }
  return [{ text: arg.kind === 'name' ? called(arg.text, words) : arg.text }];
}

/** A name in this language; as written where it has no other. */
export const called = (name: string, { names }: Words): string => names.get(name) ?? name;

/** Between the items of a series: no comma where one stands inside them, in numbers or in phrases. */
export const separator = ({ decimal }: Words, items: readonly Arg[]): string =>
  decimal === ',' || items.some(holdsSeries) ? ';' : ',';

const holdsSeries = (item: Arg): boolean =>
  item.kind === 'line' && Object.values(item.with).some((arg) => arg.kind === 'series');

export function plainText(segments: readonly Segment[]): string {
  return segments.map((segment) => segment.text).join('');
}

/** `180.0 mm`, held together by a no-break space; a degree sign stands close. */
export function withUnit(text: string, unit: string): string {
  if (unit === '') return text;
  return unit === '°' ? `${text}°` : `${text}\u00a0${unit}`;
}

/** `50.20–50.40`; a range that starts below zero is told in words, as a dash beside a minus sign misleads. */
export function rangeText(lowest: string, highest: string, words: Words, tell: Tell): string {
  const [low, high] = [inLanguage(lowest, words.decimal), inLanguage(highest, words.decimal)];
  if (low === high) return low;
  if (!/^[-−]/.test(low)) return `${low}–${high}`;
  return `${low}\u00a0${plainText(sentence('labels.to', {}, words, tell))}\u00a0${high}`;
}

function figureSegments({ text, unit, second }: Figure, { decimal }: Words): Segment[] {
  return inBoth(
    withUnit(inLanguage(text, decimal), unit),
    second && withUnit(inLanguage(second.text, decimal), second.unit),
  );
}

/**
 * Limits, and after them what a reading must lie inside to be accepted, where that is less. In a sentence only the latter
 * stands: it says what to do.
 */
function limitsSegments(limits: Limits, words: Words, tell: Tell): Segment[] {
  const { acceptance } = limits;
  const own = rangeSegments(limits, words, tell);
  if (!acceptance) return own;
  const accept = plainText(sentence('labels.accept', {}, words, tell));
  return [...own, { text: `; ${accept} ` }, ...rangeSegments(acceptance, words, tell)];
}

/** What to act on: of limits with acceptance limits, these. */
function acted(arg: Arg): Arg {
  if (arg.kind !== 'limits' || !arg.acceptance) return arg;
  return { kind: 'limits', fact: arg.fact, target: arg.target, ...arg.acceptance };
}

type Range = Pick<Limits, 'low' | 'high' | 'unit' | 'second'>;

function rangeSegments({ low, high, unit, second }: Range, words: Words, tell: Tell): Segment[] {
  return inBoth(
    withUnit(rangeText(low, high, words, tell), unit),
    second && withUnit(rangeText(second.low, second.high, words, tell), second.unit),
  );
}

function inBoth(first: string, second: string | undefined): Segment[] {
  const figure = { text: first, figure: true } as const;
  return second === undefined ? [figure] : [figure, { text: ' ' }, { text: `(${second})`, figure: true }];
}

/** The sentence `id` with its {places} filled. */
export function sentence(id: string, args: Readonly<Record<string, Arg>>, words: Words, tell: Tell): Segment[] {
  const found = words.sentences.get(id);
  if (!found) {
    tell(missing(id, words));
    return inOriginal(id, args, words, tell) ?? [{ text: `[${id}]` }];
  }
  for (const name of Object.keys(args)) {
    if (!found.places.includes(name)) tell(unused(id, name, found.place));
  }
  const segments: Segment[] = [];
  let last = 0;
  for (const match of found.text.matchAll(PLACE)) {
    if (match.index > last) segments.push({ text: found.text.slice(last, match.index) });
    last = match.index + match[0].length;
    const name = match[1] ?? '';
    const arg = Object.hasOwn(args, name) ? args[name] : undefined;
    if (!arg) tell(argumentMissing(id, name, found.place, Object.keys(args)));
    segments.push(...(arg ? resolve(acted(arg), words, tell) : [{ text: `[${name}]` }]));
  }
  if (last < found.text.length) segments.push({ text: found.text.slice(last) });
  return segments;
}

/** A text of safety is never blank: what is not translated stands in the words of the original, and says so in both. */
function inOriginal(
  id: string,
  args: Readonly<Record<string, Arg>>,
  { original, ...words }: Words,
  tell: Tell,
): Segment[] | undefined {
  if (!isSafety(id) || !original?.sentences.has(id)) return undefined;
  const told = ({ sentences }: Words) => sentences.get('sheet.not-translated')?.text;
  const both = [told(words), told(original)].filter((text) => text !== undefined).join(' · ');
  return [
    { text: `${both}: ` },
    ...sentence(id, args, original, tell).map((segment) => ({ ...segment, language: original.language })),
  ];
}

function missing(id: string, words: Words): Finding {
  const keys = id.split('.').slice(0, -1);
  while (keys.length > 0 && !words.sections.has(keys.join('.'))) keys.pop();
  const place = words.sections.get(keys.join('.')) ?? { file: words.file, start: 0, end: 0 };
  return {
    id: 'word-missing',
    // What the original fills is no gap: the cards go out with it.
    severity: isSafety(id) && words.original?.sentences.has(id) ? 'caution' : 'error',
    place,
    what: `There is no sentence "${id}" in ${words.file}.`,
    why: 'A card asks for it: the line would be blank at the station, or stand in a language that not everybody there reads.',
    mend: `Write it in ${words.file}, or correct its name. ${offer(id, words.sentences.keys())}`,
    notes: [],
    about: [],
  };
}

function argumentMissing(id: string, name: string, place: Place, given: readonly string[]): Finding {
  return {
    id: 'word-argument-missing',
    severity: 'error',
    place,
    what: `"${id}" has a place {${name}}, but the card gives nothing for it.`,
    why: 'The line would be printed with a hole where a number or a name belongs.',
    mend: `Use the places the card fills. ${offer(name, given)}`,
    notes: [],
    about: [],
  };
}

function unused(id: string, name: string, place: Place): Finding {
  return {
    id: 'word-argument-unused',
    severity: 'error',
    place,
    what: `"${id}" has no place for {${name}}, which the card gives.`,
    why: 'The number or name would be lost on the way to the station.',
    mend: `Put {${name}} into the sentence.`,
    notes: [],
    about: [],
  };
}
