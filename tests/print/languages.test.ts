/** A language is the twin of the English file: the same sentences, each with the same places for what a card puts in. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { loadWords } from '../../src/print/words.ts';
import { fontBytes } from './fixture.ts';
import { readFont } from './font.ts';

const load = (language: string) => {
  const file = `templates/words/${language}.yaml`;
  return loadWords(file, readFileSync(join(import.meta.dirname, '..', '..', file)));
};

const english = load('en').words.sentences;

/** Reviewed: places, signs and names only, or a word that both languages write alike. */
const ALIKE: Readonly<Record<string, readonly string[]>> = {
  es: [
    'change.row-at',
    'chart.capability',
    'edge-gluing.pulses',
    'machining.hole',
    'machining.left',
    'machining.step.contour',
    'picking.scale',
    'posted.range-from',
    'rework.beyond',
    'rework.no-limit',
    'rework.short',
    'rough-sawing.hole',
    'running.nothing',
    'running.write',
    'running.write-long',
    'severity.error',
    'sheet-cell.part-value',
    'under-way.line',
  ],
};

describe.each(['es'])('the words in %s', (language) => {
  const { words, findings } = load(language);
  const textOf = (id: string) => words.sentences.get(id)?.text ?? '';

  it('are read without a finding, and say which language they are', () => {
    expect(findings).toEqual([]);
    expect(words.language).toBe(language);
  });

  it('are the same sentences in the same order', () => {
    expect([...words.sentences.keys()]).toEqual([...english.keys()]);
  });

  it('have the same places in each sentence', () => {
    const placesOf = (sentences: typeof english) =>
      Object.fromEntries([...sentences].map(([id, { places }]) => [id, places.toSorted()]));
    expect(placesOf(words.sentences)).toEqual(placesOf(english));
  });

  it('left no sentence in English', () => {
    const alike = [...english].filter(([id, { text }]) => text === textOf(id)).map(([id]) => id);
    expect(alike.toSorted()).toEqual(ALIKE[language]);
  });

  it('have a glyph for every character, light and bold', () => {
    const used = new Set([...words.sentences.values()].flatMap(({ text }) => [...text, ...text.toUpperCase()]));
    for (const weight of [400, 700] as const) {
      const { characters } = readFont(fontBytes('next', weight));
      expect([...used].filter((character) => !characters.has(character.codePointAt(0)!))).toEqual([]);
    }
  });

  // Page 1 of a card is full: what grows here may push the sign-off off it. Told, not asserted: what fits is seen on paper.
  afterAll(() => {
    const rows = [...english].map(([id, { text }]) => ({ id, from: text.length, to: textOf(id).length }));
    const sum = (of: 'from' | 'to') => rows.reduce((total, row) => total + row[of], 0);
    const grown = rows.filter(({ from }) => from >= 20).toSorted((a, b) => b.to / b.from - a.to / a.from);
    const percent = (from: number, to: number) => `${Math.round((to / from) * 100)} %`;
    console.log(
      [
        `${language}: ${sum('to')} characters, ${percent(sum('from'), sum('to'))} of the English; lines that grew most:`,
        ...grown.slice(0, 10).map(({ id, from, to }) => `${percent(from, to).padStart(7)}  ${id}: ${textOf(id)}`),
      ].join('\n'),
    );
  });
});
