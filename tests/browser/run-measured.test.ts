/**
 * Run sheet, labels and travellers of a run measured as the cards are: overflow, capitals, contrast, texts apart, order,
 * glyphs, pages. The default run takes the usual case and the worst; CARDS_ALL=1 each paper, language and length of names.
 */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { loadWords } from '../../src/print/words.ts';
import { root } from '../cards/demo.ts';
import { openDesk, type Desk } from './measure/desk.ts';
import { languages, NAMES, type Names, type Paper } from './measure/editions.ts';
import { faultsOf, look } from './measure/measured.ts';
import { readPaper } from './measure/paper.ts';
import { printedRun } from './run-of-sample.ts';

const CASES: readonly (readonly [Paper, string, Names])[] =
  process.env['CARDS_ALL'] === undefined
    ? [
        ['A4', 'en', 'as they are'],
        ['Letter', 'es', 'three times as long'],
      ]
    : (['A4', 'Letter'] as const).flatMap((paper) =>
        languages.flatMap((language) => NAMES.map((names) => [paper, language, names] as const)),
      );

let desk: Desk;
beforeAll(async () => void (desk = await openDesk()), 120_000);
afterAll(() => desk.close());

const counterOf = (language: string): string => {
  const file = `templates/words/${language}.yaml`;
  return loadWords(file, readFileSync(join(root, file))).words.sentences.get('sheet.page')!.text;
};

describe.each(CASES)('a run on %s in %s, names %s', (paper, language, names) => {
  test('keeps every measure of a card', { timeout: 240_000 }, async () => {
    const { output } = await printedRun(paper, language, names);
    // One traveller of each hand, and one of several bodies.
    const sheets = output.sheets.filter(({ name }) => !name.startsWith('travellers/') || /2001-3|2002/.test(name));
    const pdfs = await desk.print(output.shell, sheets);
    const faults: string[] = [];
    for (const sheet of sheets) {
      const shown = await look(desk, output.shell, sheet);
      const pages = await readPaper(pdfs.get(sheet.name)!);
      for (const [measure, of] of Object.entries(faultsOf(shown, pages, sheet, counterOf(language))))
        faults.push(...of.map((fault) => `${sheet.name}: ${measure}: ${fault}`));
    }
    expect(sheets.length).toBeGreaterThanOrEqual(8);
    expect(faults).toEqual([]);
  });
});
