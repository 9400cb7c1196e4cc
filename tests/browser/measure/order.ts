/// <reference lib="dom" />
/** What a screen reader reads, in which order: that of the work, and the one the eye meets on paper. */
import type { Page } from 'puppeteer';
import { edgesOf } from './quad.ts';
import type { TextRun } from './texts.ts';

/** Blocks of a card in the order they are worked by; one may be absent, several of a kind follow each other. */
const ORDER = [
  'head',
  'over',
  'key-numbers',
  'steps',
  'cautions',
  'notice',
  'when-out',
  'checks',
  'sign-off',
  'tools',
  'foot',
  'notes',
  'long.first',
  'pictures',
  'drawings',
  'long',
];

/** Names of a card's blocks as they follow each other in the document; those in columns one by one. */
export const blocksOn = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll('.card > :not(.work), .card > .work > *')]
      .filter(({ localName }) => localName !== 'style')
      .map(({ classList }) => (classList.contains('first') ? 'long.first' : classList[0]!)),
  );

export function outOfOrder(blocks: readonly string[]): string[] {
  const ranks = blocks.map((block) => ORDER.indexOf(block));
  return blocks.flatMap((block, i) => {
    if (ranks[i]! < 0) return [`a block of no known place: ${block}`];
    return i > 0 && ranks[i]! < ranks[i - 1]! ? [`${block} is read after ${blocks[i - 1]}`] : [];
  });
}

/** Letters of one line may stand on different heights by this. */
const LINE_MM = 2;

/**
 * The eye goes down, and up again only to the right, to the next column: a text that stands higher than the one read
 * before it must stand right of it. Texts in drawings are looked up, not read in order.
 */
export function readOtherwise(texts: readonly TextRun[]): string[] {
  const read = texts.filter(({ role, quads }) => role !== 'drawing' && quads.length > 0);
  return read.slice(1).flatMap((text, i) => {
    const before = read[i]!;
    const first = edgesOf(text.quads[0]!);
    const last = before.quads.map(edgesOf);
    const above = first.bottom < last.at(-1)!.bottom - LINE_MM;
    const rightOf = first.left > Math.max(...last.map(({ right }) => right)) - LINE_MM;
    return above && !rightOf ? [`"${text.text}" is read after "${before.text}" and stands above it`] : [];
  });
}
