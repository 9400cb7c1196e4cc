/// <reference lib="dom" />
/** What a card says, block by block, to be found again on its paper. */
import type { Page } from 'puppeteer';
import { folded, type PaperPage } from './paper.ts';

export interface TableText {
  readonly title: string;
  readonly head: string;
  readonly rows: readonly string[];
}

export interface Content {
  /** Texts that page 1 must hold, each whole, by the block they stand in. */
  readonly first: readonly { readonly block: string; readonly text: string }[];
  readonly tables: readonly TableText[];
}

/**
 * Everything one works by. The list of tools is not among it: steps and checks name what is taken in hand, and it closes the
 * page where there is room.
 */
const FIRST = [
  '.status, h1, .model, .finishes, .code-text, .code-note',
  '.key-label, .key-value, .key-second',
  '.steps li',
  '.notice span',
  '.signal, .caution li',
  '.when-out h2, .when-out li, .decides',
  '.checks-head',
  '.check-what, .check-limits, .check-how, .box-label',
  '.sign-off li',
];

export const contentOf = (page: Page): Promise<Content> =>
  page.evaluate((selectors) => {
    const textOf = (element: Element) => element.textContent.trim();
    return {
      first: selectors.flatMap((selector) =>
        [...document.querySelectorAll(`.card :is(${selector})`)]
          .filter((element) => textOf(element) !== '')
          .map((element) => ({
            block: element.closest('.steps') ? 'step' : (element.classList[0] ?? element.localName),
            text: textOf(element),
          })),
      ),
      // The table of a form is its page: its head is the form's own, and a row may be longer than a page.
      tables: [...document.querySelectorAll('table:not(.form-table)')].map((table) => ({
        title: table.previousElementSibling?.textContent ?? '',
        head: table.tHead?.textContent ?? '',
        rows: [...table.tBodies].flatMap((body) => [...body.rows].map(textOf)),
      })),
    };
  }, FIRST);

/** Page 1 alone is enough to work. */
export const notOnFirstPage = ({ first }: Content, [page]: readonly PaperPage[]): string[] =>
  first
    .filter(({ text }) => !page?.folded.includes(folded(text)))
    .map(({ block, text }) => `not on page 1: ${block}: ${text}`);

/** What belongs on page 1 is at least somewhere: a line over two pages is on neither whole. */
export const notOnPaper = ({ first }: Content, pages: readonly PaperPage[]): string[] =>
  first
    .filter(({ text }) => !pages.some((page) => page.folded.includes(folded(text))))
    .map(({ block, text }) => `on no page: ${block}: ${text}`);

/** Whichever page is lifted from the pile says what it belongs to. */
export const notOnEveryPage = (texts: readonly string[], pages: readonly PaperPage[]): string[] =>
  texts
    .filter((text) => !pages.every((page) => page.folded.includes(folded(text))))
    .map((text) => `not on every page: ${text}`);

/** How many of each the data holds, against what the page shows: a template may not lose one. */
export function notAsMany(content: Content, wanted: Readonly<Record<string, number>>): string[] {
  return Object.entries(wanted).flatMap(([block, count]) => {
    const shown = content.first.filter((one) => one.block === block).length;
    return shown === count ? [] : [`${count} of ${block} in the data, ${shown} on the card`];
  });
}

/** A row that no page holds whole is torn or lost; a page with rows of a table must show its head. */
export function headless({ tables }: Content, pages: readonly PaperPage[]): string[] {
  return tables.flatMap(({ title, head, rows }) => {
    const at = rows.map((row) => pages.flatMap((page, i) => (page.folded.includes(folded(row)) ? [i] : [])));
    const torn = rows.filter((row, i) => folded(row) !== '' && at[i]!.length === 0);
    // A row that several pages could hold, as an empty one of a form, says nothing about where the table is.
    const on = new Set(at.flatMap((found) => (found.length === 1 ? found : [])));
    const bare = [...on].filter((i) => !pages[i]!.folded.includes(folded(head)));
    return [
      ...torn.map((row) => `on no page whole: ${title}: ${row.replace(/\s+/g, ' ')}`),
      ...bare.map((i) => `page ${i + 1} goes on with a table without its head: ${title}`),
    ];
  });
}

/** 'page n of m' on every page, m pages in all. `counter`: the sentence of the language, with {page} and {pages}. */
export function miscounted(counter: string, pages: readonly PaperPage[]): string[] {
  return pages.flatMap(({ folded: text }, i) => {
    const says = folded(counter.replace('{page}', String(i + 1)).replace('{pages}', String(pages.length)));
    // What is read next may be the code, and that may begin with a digit.
    return new RegExp(`${escape(says)}(?=[2-9A-Z]{4}-[2-9A-Z]{4}|\\D|$)`).test(text)
      ? []
      : [`page ${i + 1} of ${pages.length} does not say so`];
  });
}

const escape = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
