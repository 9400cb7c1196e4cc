/** Travellers and first-piece reports on paper, as made and with every name three times as long, on A4 and on Letter. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { MadeCard } from '../../src/cards/card.ts';
import { compileAll } from '../../src/compile.ts';
import { printFirstPieceForms, printTravellerForms, travellerFor } from '../../src/forms.ts';
import { openBrowser } from '../../src/host/browser.ts';
import type { Running } from '../../src/host/browser.ts';
import { memoryHost } from '../../src/host/memory.ts';
import { openPrinter } from '../../src/host/printer.ts';
import type { Printer } from '../../src/host/printer.ts';
import { demoFiles } from '../cards/demo.ts';
import { readPdf } from './read-pdf.ts';
import type { ReadPdf } from './read-pdf.ts';

const DAY = '2026-11-25';
const PLANT = 'models/plant/plant.yaml';
const MM = { A4: [210, 297], Letter: [215.9, 279.4] } as const;
type Paper = keyof typeof MM;

/** A capped body in both hands, one whose planer reads inches first, and a slab. */
const MODELS = ['tarn', 'fell', 'skerry'];

/** Every name on a card, so much longer. */
function longer<T>(value: T): T {
  const three = (key: string, inside: object, field: unknown): unknown =>
    typeof field === 'string' && key === 'text' && 'kind' in inside && inside.kind === 'name'
      ? `${field} ${field} ${field}`
      : longer(field);
  if (Array.isArray(value)) return value.map(longer) as T;
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, field]) => [key, three(key, value, field)])) as T;
}

function forms(paper: Paper, names: 'as made' | 'long') {
  const files = demoFiles();
  const plant = new TextDecoder().decode(files[PLANT]).replace('paper: A4', `paper: ${paper}`);
  const host = memoryHost({ ...files, [PLANT]: plant });
  const compiled = compileAll(host, DAY);
  return MODELS.map((id) => {
    const { cards: own, revision } = compiled.models.find((model) => model.id === id)!;
    const cards: readonly MadeCard[] =
      names === 'long' ? own.map(({ card, ...made }) => ({ ...made, card: longer(card) })) : own;
    const source = { cards, posting: { revision, status: 'draft', said: new Map() } } as const;
    const number = names === 'long' ? '2114-2114-2114' : '2114';
    const order = {
      number,
      hand: 'right',
      quantity: 2,
      pair: 'P-118',
      finish: cards[0]!.card.key.finishes[0]!,
    } as const;
    const traveller = travellerFor(source, compiled, order);
    if ('refused' in traveller) throw new Error(traveller.refused);
    const reports = printFirstPieceForms(host, compiled, source, DAY, { hand: 'right' });
    if ('refused' in reports) throw new Error(reports.refused);
    const printed = printTravellerForms(host, compiled, [traveller], DAY);
    expect([...printed.findings, ...reports.findings]).toEqual([]);
    const onRoute = own.filter(({ card }) => card.key.hand === 'right' && card.key.station !== 'set-aside');
    return { id, cards: onRoute, number, printed, reports };
  });
}

let running: Running;
let printer: Printer;

beforeAll(async () => {
  const opened = await openBrowser(process.env);
  if ('missing' in opened) throw new Error(opened.missing);
  running = opened;
  const made = await openPrinter(() => Promise.resolve(opened));
  if ('missing' in made) throw new Error(made.missing);
  printer = made;
}, 120_000);

afterAll(() => printer.close());

const folded = (text: string) => text.replace(/\s+/g, '');

interface Measured {
  /** What stands out of the sheet, or out of its own box. */
  readonly over: readonly string[];
  /** Width and height of every box to write in, in mm. */
  readonly boxes: readonly (readonly [number, number])[];
  /** Sizes of type, in mm. */
  readonly type: readonly number[];
}

/** The page at the width of its sheet, looked at as text: types of the browser do not reach here. */
async function measured(shell: string, body: string): Promise<Measured> {
  const page = await running.browser.newPage();
  await page.setContent(shell.replace('</body>', `${body}</body>`), { waitUntil: 'load' });
  const found = (await page.evaluate(`(() => {
    const mm = 25.4 / 96;
    const all = [...document.querySelectorAll('article *')];
    const sheet = document.querySelector('article').getBoundingClientRect();
    const texts = all.filter((one) => [...one.childNodes].some((node) => node.nodeType === 3 && node.data.trim() !== ''));
    return {
      over: all
        .filter((one) => one.getBoundingClientRect().right > sheet.right + 0.5 || one.scrollWidth > one.clientWidth + 1 && one.clientWidth > 0)
        .map((one) => one.className + ': ' + one.textContent.slice(0, 60)),
      boxes: [...document.querySelectorAll('.form-box')].map((one) => [one.offsetWidth * mm, one.offsetHeight * mm]),
      type: texts.map((one) => parseFloat(getComputedStyle(one).fontSize) * mm),
    };
  })()`)) as Measured;
  await page.close();
  return found;
}

/** CARDS_ALL=1: both on both; without it the usual case and the worst. */
const CASES: readonly [Paper, 'as made' | 'long'][] =
  process.env['CARDS_ALL'] === undefined
    ? [
        ['A4', 'as made'],
        ['Letter', 'long'],
      ]
    : [
        ['A4', 'as made'],
        ['A4', 'long'],
        ['Letter', 'as made'],
        ['Letter', 'long'],
      ];

describe.each(CASES)('on %s, names %s', (paper, names) => {
  const made = forms(paper, names);
  const read = new Map<string, ReadPdf>();

  beforeAll(async () => {
    for (const { id, printed, reports } of made) {
      for (const { shell, sheets } of [printed, reports]) {
        const pdfs = await printer.print(shell, sheets);
        if ('failed' in pdfs) throw new Error(pdfs.failed);
        for (const [name, bytes] of pdfs) read.set(sheets === printed.sheets ? id : name, await readPdf(bytes));
      }
    }
  }, 240_000);

  test('every page is a sheet of that size', () => {
    for (const [name, { sizesMm }] of read)
      for (const size of sizesMm)
        for (const side of [0, 1] as const) expect(Math.abs(size[side] - MM[paper][side]), name).toBeLessThan(0.2);
  });

  test('nothing stands out, boxes have room for a pencil, type is read at the bench', async () => {
    for (const { printed, reports } of made) {
      for (const { shell, sheets } of [printed, reports]) {
        for (const { name, body } of sheets) {
          const { over, boxes, type } = await measured(shell, body);
          expect(over, name).toEqual([]);
          for (const [width, height] of boxes) {
            expect(width).toBeGreaterThanOrEqual(16);
            expect(height).toBeGreaterThanOrEqual(8);
          }
          expect(Math.min(...type), name).toBeGreaterThanOrEqual(3.1);
        }
      }
    }
  }, 240_000);

  test('a traveller has its order on every page; read back, each code once, in order, with its limits', () => {
    for (const { id, cards, number } of made) {
      const { pages } = read.get(id)!;
      for (const page of pages) expect(folded(page), id).toContain(`Order${folded(number)}`);
      const text = folded(pages.join(' '));
      const at = cards.map(({ code }) => text.indexOf(code));
      expect(at.every((one) => one >= 0)).toBe(true);
      expect(at).toEqual(at.toSorted((a, b) => a - b));
      for (const { code } of cards) expect(text.split(code)).toHaveLength(2);
      const shown = cards.filter(({ card }) => card.key.station !== 'conditioning');
      for (const { low, high } of shown.flatMap(({ card }) => card.checks.flatMap(({ limits }) => limits ?? [])))
        expect(text, id).toMatch(low.startsWith('-') ? `${low}to${high}` : `${low}–${high}`);
    }
  });

  if (names === 'as made')
    test('a slab goes on two pages, a capped body on three; a report of a set-up of two spindles on three at most', () => {
      const pages = (name: string) => read.get(name)!.pages.length;
      expect(MODELS.map(pages)).toEqual([3, 2, 2]);
      // Two set-ups.
      for (const id of MODELS) expect(pages(`${id}/router.pdf`)).toBeLessThanOrEqual(6);
    });

  test('a report is headed on every page by its station and code', () => {
    for (const { reports } of made)
      for (const { name } of reports.sheets)
        for (const page of read.get(name)!.pages)
          expect(folded(page), name).toMatch(
            /[2-9A-Z]{4}-[2-9A-Z]{4}.*Orderofthefirstpiece|Orderofthefirstpiece.*[2-9A-Z]{4}-[2-9A-Z]{4}/,
          );
  });
});
