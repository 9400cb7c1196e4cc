import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Card, KeyNumber } from '../../src/cards/card.ts';
import { compileAll, printCompiled } from '../../src/compile.ts';
import { memoryHost } from '../../src/host/memory.ts';
import { joinPdf } from '../../src/host/join-pdf.ts';
import type { Pile } from '../../src/host/join-pdf.ts';
import type { Printer } from '../../src/host/printer.ts';
import { workspaceHost } from '../../src/host/workspace.ts';
import { demoFiles, root } from '../cards/demo.ts';
import { readPdf } from './read-pdf.ts';

const host = memoryHost(demoFiles());
const compiled = compileAll(host);
const printed = printCompiled(host, compiled, '2026-11-25');

/** Both hands, and gauges of both units; CARDS_ALL=1 prints all. */
const SOME = ['tarn'];
const models = compiled.models.filter(({ id }) => process.env['CARDS_ALL'] !== undefined || SOME.includes(id));
const cards = models.flatMap((model) => model.cards);
const stations = compiled.sheets.filter((_, i) => process.env['CARDS_ALL'] !== undefined || i % 6 === 0);
const onPaper = printed.sheets.filter(
  ({ name }) =>
    models.some(({ id }) => name.startsWith(`models/${id}/`)) ||
    stations.some(({ station }) => name.startsWith(`stations/${station.id}/`)),
);

let printer: Printer;
let paper: ReadonlyMap<string, Uint8Array>;

beforeAll(async () => {
  const opened = await workspaceHost(root).openPrinter();
  if ('missing' in opened) throw new Error(opened.missing);
  printer = opened;
  const result = await printer.print(printed.shell, onPaper);
  if ('failed' in result) throw new Error(result.failed);
  const piles = printed.piles.filter(({ of }) => of.every((name) => result.has(name)));
  const joined = piles.map(async (pile) => [pile.name, await join(pile, result)] as const);
  paper = new Map([...result, ...(await Promise.all(joined))]);
}, 300_000);

afterAll(() => printer.close());

const join = (pile: Pile, pdfs: ReadonlyMap<string, Uint8Array>) =>
  joinPdf(
    pile,
    pile.of.map((name) => pdfs.get(name)!),
  );

const folded = (text: string) => text.replace(/\s+/g, '');
const fileOf = ({ key }: Card) => `models/${key.model}/${key.station}${key.hand === 'left' ? '-left' : ''}.pdf`;
const numbersOf = ({ value }: KeyNumber): readonly string[] =>
  value.kind === 'limits'
    ? [value.low, value.high, value.unit]
    : value.kind === 'figure'
      ? [value.text, value.unit]
      : [];

describe('the cards on paper, read back', () => {
  test('one PDF a model in route order, one a station over all models, one a card, one a station sheet', () => {
    const names = [...paper.keys()];
    for (const { card } of cards) expect(names).toContain(fileOf(card));
    for (const { id } of models) expect(names).toContain(`models/${id}/${id}.pdf`);
    for (const { station } of stations) {
      expect(printed.piles.map(({ name }) => name)).toContain(`stations/${station.id}/${station.id}.pdf`);
      expect(names).toContain(`stations/${station.id}/sheet.pdf`);
    }
  });

  test('each card: A4 pages, its title, revision, code and key numbers on page 1', async () => {
    for (const { card, code } of cards) {
      const { pages, sizesMm } = await readPdf(paper.get(fileOf(card))!);
      const where = fileOf(card);
      for (const [width, height] of sizesMm) {
        expect(Math.abs(width - 210), where).toBeLessThan(0.2);
        expect(Math.abs(height - 297), where).toBeLessThan(0.2);
      }
      const first = folded(pages[0]!);
      for (const text of [card.model.text, card.station.text, code]) expect(first, where).toContain(folded(text));
      for (const number of card.keyNumbers.flatMap(numbersOf)) expect(first, where).toContain(folded(number));
      // Page 1 alone is enough to work: it ends with the sign-off.
      expect(first, where).toMatch(/Order.*Date.*Name/);
    }
  });

  test('the PDF of a model holds all its cards in route order', async () => {
    for (const { id, cards: made } of models) {
      const { pages } = await readPdf(paper.get(`models/${id}/${id}.pdf`)!);
      const all = folded(pages.join(' '));
      const at = made.map(({ code }) => all.indexOf(folded(code)));
      expect(at.every((index) => index >= 0)).toBe(true);
      expect(at).toEqual(at.toSorted((a, b) => a - b));
    }
  });

  test('in it each card keeps its own page numbers, and the same cards give the same bytes', async () => {
    for (const { id, cards: made } of models) {
      const pile = printed.piles.find(({ name }) => name === `models/${id}/${id}.pdf`)!;
      const { pages } = await readPdf(paper.get(pile.name)!);
      expect(pages.filter((page) => /page 1 of \d/.test(page))).toHaveLength(made.length);
      expect(Buffer.compare(Buffer.from(await join(pile, paper)), Buffer.from(paper.get(pile.name)!))).toBe(0);
    }
  });

  test('a station sheet has a row for every model that passes the station', async () => {
    for (const sheet of stations) {
      const { pages } = await readPdf(paper.get(`stations/${sheet.station.id}/sheet.pdf`)!);
      const all = folded(pages.join(' '));
      for (const { model } of sheet.rows) expect(all).toContain(folded(model.text));
    }
  });
});

describe('the same inputs', () => {
  test('give the same HTML, SVG and JSON bytes', () => {
    const again = memoryHost(demoFiles());
    const second = printCompiled(again, compileAll(again), '2026-11-25');
    expect([...second.files.keys()]).toEqual([...printed.files.keys()]);
    for (const [path, content] of printed.files) expect(second.files.get(path), path).toEqual(content);
  });

  test('give the same PDF bytes from the same browser', async () => {
    const some = onPaper.filter((_, i) => i % 9 === 0);
    const result = await printer.print(printed.shell, some);
    if ('failed' in result) throw new Error(result.failed);
    for (const { name } of some)
      expect(Buffer.compare(Buffer.from(result.get(name)!), Buffer.from(paper.get(name)!)), name).toBe(0);
  });
});
