/// <reference lib="dom" />
/** Nothing is wider than its place, stands out of the card or is cut off, and the browser did not shrink the page. */
import type { Page } from 'puppeteer';
import { edgesOf } from './quad.ts';
import { folded, MM_PER_POINT, type PaperPage } from './paper.ts';

/** Half a CSS pixel, in pixels: a browser rounds widths to whole ones. */
const ROUNDED_PX = 0.5;

/** Faults on the page as it is shown: on paper's width, not yet divided into pages. */
export const overflowing = (page: Page): Promise<string[]> => page.evaluate(gather, ROUNDED_PX);

/** Runs in the browser: it may use nothing of this file. */
function gather(rounded: number): string[] {
  const faults: string[] = [];
  const within = [...document.querySelectorAll('article')];
  const roots: Element[] = within.length > 0 ? within : [document.body];
  for (const root of roots) {
    const room = root.getBoundingClientRect();
    for (const element of root.querySelectorAll('*')) {
      if (hidden(element) || (element instanceof SVGElement && element.localName !== 'svg')) continue;
      if (
        element.scrollWidth > element.clientWidth + rounded &&
        element.clientWidth > 0 &&
        !(element instanceof SVGElement)
      )
        faults.push(`${element.scrollWidth - element.clientWidth} px wider than its place: ${nameOf(element)}`);
      for (const { left, right, width } of element.getClientRects())
        if (width > 0 && (left < room.left - rounded || right > room.right + rounded))
          faults.push(
            `stands out of the card by ${Math.max(room.left - left, right - room.right).toFixed(1)} px: ${nameOf(element)}`,
          );
    }
    const walker = document.createTreeWalker(root, NodeFilter.SHOW_TEXT);
    while (walker.nextNode()) cutOff(walker.currentNode, room);
  }
  return [...new Set(faults)];

  /** A text that leaves a box which hides what leaves it, or the drawing it belongs to, or the card. */
  function cutOff(node: Node, room: DOMRect): void {
    const element = node.parentElement!;
    if (node.textContent!.trim() === '' || hidden(element)) return;
    const range = document.createRange();
    range.selectNodeContents(node);
    const svg = element.closest('svg');
    const rects = svg ? [element.getBoundingClientRect()] : [...range.getClientRects()];
    for (const rect of rects.filter(({ width }) => width > 0)) {
      if (rect.left < room.left - rounded || rect.right > room.right + rounded) tell('stands out of the card', node);
      if (svg && outOf(rect, svg.getBoundingClientRect())) tell('stands out of its drawing', node);
      for (let at: Element | null = element; at && at !== document.body; at = at.parentElement) {
        const { overflowX, overflowY, textOverflow } = getComputedStyle(at);
        if (at instanceof SVGElement || (overflowX === 'visible' && overflowY === 'visible')) continue;
        if (outOf(rect, at.getBoundingClientRect()) || textOverflow === 'ellipsis') tell('is cut off', node);
      }
    }
  }

  function tell(what: string, node: Node): void {
    faults.push(`${what}: ${nameOf(node.parentElement!)}: ${node.textContent!.trim()}`);
  }

  function outOf(rect: DOMRect, room: DOMRect): boolean {
    return (
      rect.left < room.left - rounded ||
      rect.right > room.right + rounded ||
      rect.top < room.top - rounded ||
      rect.bottom > room.bottom + rounded
    );
  }

  function nameOf(element: Element): string {
    return [element.parentElement, element]
      .map((one) => [one?.localName, ...(one?.classList ?? [])].join('.'))
      .join(' ');
  }

  function hidden(element: Element): boolean {
    if (!element.checkVisibility()) return true;
    for (let at: Element | null = element; at; at = at.parentElement) {
      const { overflow, position } = getComputedStyle(at);
      if (position === 'absolute' && overflow === 'hidden' && at.clientWidth <= 1) return true;
      if (['title', 'defs', 'style'].includes(at.localName)) return true;
    }
    return false;
  }
}

/** Room beside the text in millimetres: what the style leaves free on each side. */
export interface Margins {
  readonly side: number;
  /** No printer reaches the last millimetres of a sheet. */
  readonly edge: number;
}

/** A4 and sheets that lie across leave 10 mm; Letter upright leaves what makes both equally wide. */
export const marginsOf = (paper: 'A4' | 'Letter', across: boolean): Margins => ({
  side: paper === 'Letter' && !across ? 12.95 : 10,
  edge: 3,
});

/** Each letter on paper is moved to a whole pixel: a long text is longer by so much than its letters. */
const OFF_MM = 1;

/** Texts that leave the page's room on paper. */
export function offThePage(pages: readonly PaperPage[], { side, edge }: Margins): string[] {
  return pages.flatMap(({ texts, widthMm, heightMm }, i) =>
    texts.flatMap(({ text, quad }) => {
      const { left, right, top, bottom } = edgesOf(quad);
      const out = Math.max(side - left, right - (widthMm - side), edge - top, bottom - (heightMm - edge));
      return out > OFF_MM ? [`page ${i + 1}: ${out.toFixed(1)} mm out of its room: ${text}`] : [];
    }),
  );
}

/** Texts that were laid out and are on no page: a printer leaves out what lies beside the sheet. */
export function lost(
  texts: readonly { readonly text: string; readonly quads: readonly unknown[] }[],
  pages: readonly PaperPage[],
): string[] {
  const all = pages.map((page) => page.folded).join('');
  return texts
    .filter(({ text, quads }) => quads.length > 0 && !all.includes(folded(text)) && !torn(folded(text), pages))
    .map(({ text }) => `not on the paper: ${text}`);
}

/** A long text may begin on one page and end on the next. */
const torn = (text: string, pages: readonly PaperPage[]): boolean =>
  pages.some((page, i) =>
    Array.from(text, (_, at) => at).some(
      (at) => page.folded.includes(text.slice(0, at)) && pages[i + 1]?.folded.includes(text.slice(at)),
    ),
  );

/** A text whose size is known, to tell whether the page is as large as it was made. */
export interface Known {
  readonly text: string;
  readonly sizeMm: number;
}

/** The browser makes a page smaller, all of it, when something on it is too wide: then no size of it is true. */
export function shrunk(known: readonly Known[], pages: readonly PaperPage[]): string[] {
  const onPaper = pages.flatMap(({ texts }) => texts);
  const met = known.flatMap((one) => {
    // A long text comes in lines; a short one may stand elsewhere in another size.
    const parts = onPaper.filter(({ text }) => text.trim().length > 2 && one.text.includes(text.trim()));
    const factors = parts.map(({ sizeMm }) => sizeMm / one.sizeMm);
    return factors.toSorted((a, b) => Math.abs(a - 1) - Math.abs(b - 1)).slice(0, 1);
  });
  if (met.length === 0) return ['no text of known size is on the paper'];
  const off = met.map((factor) => Math.abs(factor - 1));
  return Math.max(...off) > 0.002
    ? [
        `texts are ${(100 * Math.min(...met)).toFixed(1)} to ${(100 * Math.max(...met)).toFixed(1)} % of their size on paper`,
      ]
    : [];
}

/** Width and height of the sheets named by the paper, in millimetres: ISO 216, ANSI/ASME Y14.1. */
const SHEET_MM = { A4: [210, 297], Letter: [215.9, 279.4] } as const;

/** A browser rounds A4 to whole pixels. */
export function ofAnotherSize(pages: readonly PaperPage[], paper: 'A4' | 'Letter', across: boolean): string[] {
  const [short, long] = SHEET_MM[paper];
  const [width, height] = across ? [long, short] : [short, long];
  return pages.flatMap(({ widthMm, heightMm }, i) =>
    Math.max(Math.abs(widthMm - width), Math.abs(heightMm - height)) > 72 * 0.01 * MM_PER_POINT
      ? [`page ${i + 1} is ${widthMm.toFixed(1)} × ${heightMm.toFixed(1)} mm`]
      : [],
  );
}
