/// <reference lib="dom" />
/** The scale bar of a drawing is as long as it says. */
import type { Page } from 'puppeteer';
import type { PaperPage } from './paper.ts';

/** A ruler with millimetres shows no less. */
const OFF_MM = 0.2;
/** The bar is drawn thicker than any other straight line of a drawing. */
const THICK_MM = 0.5;

/** Lengths that the bars of a page state in their numbers. */
export const barsOn = (page: Page): Promise<number[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll('.scale-bar')].map((bar) => Number.parseFloat(bar.lastElementChild!.textContent)),
  );

/** How far each bar on paper is from what it states, the nearest lines first; Infinity for a bar that isn't there. */
export function barErrors(stated: readonly number[], pages: readonly PaperPage[]): number[] {
  const thick = pages.flatMap(({ strokes }) => strokes.filter(({ widthMm }) => widthMm > THICK_MM));
  return [...new Set(stated)].flatMap((length) => {
    const wanted = stated.filter((one) => one === length).length;
    const errors = thick.map(({ lengthMm }) => Math.abs(lengthMm - length)).toSorted((a, b) => a - b);
    return Array.from({ length: wanted }, (_, i) => errors[i] ?? Infinity);
  });
}

export const untrue = (stated: readonly number[], pages: readonly PaperPage[]): string[] =>
  barErrors(stated, pages)
    .filter((error) => error > OFF_MM)
    .map((error) => `a scale bar is off by ${error.toFixed(2)} mm`);
