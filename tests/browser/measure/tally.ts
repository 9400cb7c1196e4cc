/** The figures a person asks for, over all sheets of a run: least, most, how many of how many. */
import { barErrors } from './bar.ts';
import { capitalsMm, LEAST_MM, paperCapitalsMm } from './capitals.ts';
import { contrastOf, monoContrastOf } from './contrast.ts';
import type { Shown } from './measured.ts';
import type { PaperPage } from './paper.ts';

export interface Tally {
  add(shown: Shown, pages: readonly PaperPage[]): void;
  /** A card's code was read, from its print and from a photo, or was not. */
  addQr(read: boolean): void;
  table(): string;
}

export function makeTally(): Tally {
  const least = new Map<string, number>();
  const lower = (what: string, value: number) => least.set(what, Math.min(least.get(what) ?? Infinity, value));
  const count = { sheets: 0, fewest: Infinity, most: 0, qr: 0, read: 0, drawn: 0, crossed: 0, bars: 0 };
  let barMm = 0;
  return {
    add(shown, pages) {
      count.sheets++;
      count.fewest = Math.min(count.fewest, pages.length);
      count.most = Math.max(count.most, pages.length);
      for (const text of shown.texts) {
        lower(`capitals, ${text.role}`, capitalsMm(text));
        lower('contrast', contrastOf(text));
        lower('contrast in mono', monoContrastOf(text));
      }
      for (const text of pages.flatMap((page) => page.texts))
        lower('capitals, all on paper', paperCapitalsMm(text) ?? Infinity);
      count.drawn += shown.texts.filter(({ role }) => role === 'drawing').length;
      count.crossed += shown.crossed.length;
      count.bars += shown.bars.length;
      barMm = Math.max(barMm, ...barErrors(shown.bars, pages));
    },
    addQr(read) {
      count.qr++;
      if (read) count.read++;
    },
    table() {
      const mm = (what: string) => `${least.get(`capitals, ${what}`)?.toFixed(2) ?? '–'} mm`;
      const rows: [string, string][] = [
        ['sheets', `${count.sheets}, of ${count.fewest} to ${count.most} pages`],
        ...Object.entries(LEAST_MM).map(([role, bound]): [string, string] => [
          `capitals, ${role}`,
          `${mm(role)} at least (bound ${bound})`,
        ]),
        ['capitals, all on paper', `${mm('all on paper')} at least`],
        [
          'contrast',
          `${least.get('contrast')?.toFixed(1)}:1 at least, in mono ${least.get('contrast in mono')?.toFixed(1)}:1`,
        ],
        ['QR read, print and photo', `${count.read} of ${count.qr}`],
        ['scale bars', `${count.bars}, off by ${barMm.toFixed(3)} mm at most`],
        ['drawing texts with a line through', `${count.crossed} of ${count.drawn}`],
      ];
      return rows.map(([what, value]) => `  ${what.padEnd(36)}${value}`).join('\n');
    },
  };
}
