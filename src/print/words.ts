/**
 * The words of a language: one YAML file of nested maps, each leaf a sentence with {places} for what a card puts in.
 * A sentence holds no number of its own: a numeral on a card comes from a fact, or is part of a literal listed in the file.
 */
import { isMap, isScalar, isSeq, parseDocument, type Pair, type Scalar } from 'yaml';
import type { Finding, Place } from '../findings/finding.ts';
import type { DecimalMark } from '../units/in-language.ts';

export interface Sentence {
  readonly text: string;
  /** Names of the {places}, in order. */
  readonly places: readonly string[];
  readonly place: Place;
}

export interface Words {
  readonly file: string;
  /** BCP 47 tag of the language, for the page's lang attribute. */
  readonly language: string;
  readonly decimal: DecimalMark;
  /** The language it was translated from; absent of an original. */
  readonly translationOf?: string;
  /** The original itself, where it is at hand: a text of safety that is missing here is told in its words. */
  readonly original?: Words;
  /** Whether somebody went over the texts of safety: an original stands as it is. */
  readonly reviewed: boolean;
  /** What things named in specs are called in this language. */
  readonly names: ReadonlyMap<string, string>;
  /** Sentences by id: the keys on the way, joined by dots. */
  readonly sentences: ReadonlyMap<string, Sentence>;
  /** Where each map of sentences begins, so that a missing sentence is shown where it belongs. */
  readonly sections: ReadonlyMap<string, Place>;
}

export const PLACE = /\{([a-z][a-z0-9-]*)\}/gi;

interface Reading {
  readonly file: string;
  readonly source: string;
  readonly sentences: Map<string, Sentence>;
  readonly sections: Map<string, Place>;
  readonly findings: Finding[];
}

export function loadWords(file: string, bytes: Uint8Array): { words: Words; findings: Finding[] } {
  const source = new TextDecoder().decode(bytes);
  const doc = parseDocument(source, { stringKeys: true, version: '1.2' });
  const reading: Reading = { file, source, sentences: new Map(), sections: new Map(), findings: [] };
  for (const { message, pos } of [...doc.errors, ...doc.warnings]) {
    broken(reading, { file, start: pos[0], end: pos[1] }, firstLine(message));
  }
  if (isMap(doc.contents)) for (const pair of doc.contents.items) topLevel(pair, reading);
  else broken(reading, { file, start: 0, end: 0 }, 'The file holds no map of sentences.');
  checkNumerals(reading, literalsOf(doc.get('literals')));
  const said = (key: string) => {
    const value: unknown = doc.get(key);
    return typeof value === 'string' ? value : undefined;
  };
  const from = said('translation-of');
  return {
    words: {
      file,
      language: said('language') ?? 'en',
      decimal: said('decimal') === ',' ? ',' : '.',
      ...(from === undefined ? {} : { translationOf: from }),
      reviewed: from === undefined,
      names: new Map(),
      sentences: reading.sentences,
      sections: reading.sections,
    },
    findings: reading.findings,
  };
}

/** Keys that say something about the file; all else is sentences. */
const ABOUT: ReadonlySet<string> = new Set(['language', 'translation-of', 'decimal', 'literals']);

function topLevel(pair: Pair, reading: Reading): void {
  if (!ABOUT.has(keyOf(pair))) readPair(pair, '', reading);
}

function readPair(pair: Pair, before: string, reading: Reading): void {
  const id = before === '' ? keyOf(pair) : `${before}.${keyOf(pair)}`;
  const place = placeOf(pair.key, reading.file);
  if (isMap(pair.value)) {
    reading.sections.set(id, place);
    for (const inner of pair.value.items) readPair(inner, id, reading);
  } else if (isScalar(pair.value) && typeof pair.value.value === 'string' && pair.value.value.trim() !== '') {
    readSentence(id, pair.value as Scalar<string>, reading);
  } else {
    broken(reading, place, `"${id}" is neither a sentence nor a map of sentences.`);
  }
}

function readSentence(id: string, node: Scalar<string>, reading: Reading): void {
  const text = node.value.trim().replace(/\s+/g, ' ');
  const place = placeOf(node, reading.file);
  if (/[{}]/.test(text.replace(PLACE, ''))) broken(reading, place, `A brace in "${id}" opens or closes no {place}.`);
  const places = [...text.matchAll(PLACE)].map((match) => match[1] ?? '');
  reading.sentences.set(id, { text, places, place });
}

function checkNumerals(reading: Reading, literals: readonly string[]): void {
  const longestFirst = literals.toSorted((a, b) => b.length - a.length);
  for (const [id, { text, place }] of reading.sentences) {
    const bare = longestFirst.reduce((rest, literal) => rest.replaceAll(literal, ''), text.replace(PLACE, ''));
    const numeral = /\d[\d.,]*/.exec(bare)?.[0];
    if (numeral === undefined) continue;
    const at = reading.source.indexOf(numeral, place.start);
    const start = at >= 0 && at < place.end ? at : place.start;
    reading.findings.push({
      id: 'numeral-in-words',
      severity: 'error',
      place: { file: reading.file, start, end: at === start ? start + numeral.length : place.end },
      what: `"${id}" says the number ${numeral} in words.`,
      why: 'A number written here stays when the spec changes, and a card then shows a wrong one.',
      mend: 'Put a {place} there and let the fact fill it, or list the literal it belongs to under "literals".',
      notes: [],
      about: [],
    });
  }
}

function literalsOf(list: unknown): string[] {
  const values = isSeq(list) ? list.items.map((item) => (isScalar(item) ? item.value : undefined)) : [];
  return values.filter((value): value is string => typeof value === 'string' && value !== '');
}

function broken(reading: Reading, place: Place, what: string): void {
  reading.findings.push({
    id: 'words-broken',
    severity: 'error',
    place,
    what,
    why: 'The sentences of this language cannot be relied on, and every card is printed from them.',
    mend: 'Write nested maps of sentences; quote a sentence that holds a colon or begins with a brace.',
    notes: [],
    about: [],
  });
}

function keyOf(pair: Pair): string {
  return isScalar(pair.key) ? String(pair.key.value) : '';
}

function placeOf(node: unknown, file: string): Place {
  const range = isScalar(node) ? node.range : undefined;
  return { file, start: range?.[0] ?? 0, end: range?.[1] ?? 0 };
}

function firstLine(text: string): string {
  return text.split('\n', 1)[0]?.replace(/ at line.*$/, '.') ?? text;
}
