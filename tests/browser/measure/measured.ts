/** One sheet measured every way. */
import { overlapping, placed } from './apart.ts';
import { barsOn, untrue } from './bar.ts';
import { tooLow, tooLowOnPaper } from './capitals.ts';
import { contentOf, headless, miscounted, type Content } from './content.ts';
import { tooFaint } from './contrast.ts';
import { crossed, linesOn } from './crossed.ts';
import { across, type Desk } from './desk.ts';
import { withoutGlyph, withoutGlyphOnPaper } from './glyphs.ts';
import { blocksOn, outOfOrder, readOtherwise } from './order.ts';
import { lost, marginsOf, ofAnotherSize, offThePage, overflowing, shrunk } from './overflow.ts';
import type { PaperPage } from './paper.ts';
import type { PrintSheet } from '../../../src/print/print.ts';
import { textsOn, type TextRun } from './texts.ts';

/** What a sheet shows, laid out and not yet on paper. */
export interface Shown {
  readonly texts: readonly TextRun[];
  readonly content: Content;
  readonly blocks: readonly string[];
  readonly overflow: readonly string[];
  readonly bars: readonly number[];
  /** Texts in drawings that a line runs through. */
  readonly crossed: readonly TextRun[];
}

export async function look(desk: Desk, shell: string, sheet: PrintSheet): Promise<Shown> {
  await desk.show(shell, sheet);
  const { page } = desk;
  const texts = await textsOn(page);
  return {
    texts,
    content: await contentOf(page),
    blocks: await blocksOn(page),
    overflow: await overflowing(page),
    bars: await barsOn(page),
    crossed: crossed(texts, await linesOn(page)),
  };
}

export const MEASURES = [
  'overflow',
  'capitals',
  'contrast',
  'pages',
  'first page',
  'apart',
  'order',
  'glyphs',
  'bar',
  'QR',
] as const;
export type Measure = (typeof MEASURES)[number];

export type Faults = Readonly<Partial<Record<Measure, readonly string[]>>>;

/** What is wrong with any sheet, by measure. */
export function faultsOf(shown: Shown, pages: readonly PaperPage[], sheet: PrintSheet, counter: string): Faults {
  const { texts, content, bars } = shown;
  const turned = across(sheet);
  const known = texts.filter(({ where }) => /h1|code-text|code-note|code-cell/.test(where));
  return {
    overflow: [
      ...shown.overflow,
      ...offThePage(pages, marginsOf(sheet.paper, turned)),
      ...lost(texts, pages),
      ...shrunk(known, pages),
      ...ofAnotherSize(pages, sheet.paper, turned),
    ],
    capitals: [...tooLow(texts), ...tooLowOnPaper(pages)],
    contrast: tooFaint(texts),
    pages: [...miscounted(counter, pages), ...headless(content, pages)],
    apart: [
      ...overlapping(placed(texts)),
      ...pages.flatMap((page, i) => overlapping(page.texts).map((fault) => `page ${i + 1}: ${fault}`)),
    ],
    order: [...outOfOrder(shown.blocks), ...readOtherwise(texts)],
    glyphs: [...withoutGlyph(texts), ...withoutGlyphOnPaper(pages)],
    bar: untrue(bars, pages),
  };
}
