/// <reference lib="dom" />
/** A browser with a page laid out as on paper, and the program's own printer beside it. */
import type { Browser, Page } from 'puppeteer';
import { openBrowser } from '../../../src/host/browser.ts';
import { openPrinter, type Sheet } from '../../../src/host/printer.ts';

export interface Desk {
  readonly browser: Browser;
  readonly page: Page;
  /** Lays a sheet out as wide as its paper, in the style of print. */
  show(shell: string, sheet: Sheet): Promise<void>;
  print(shell: string, sheets: readonly Sheet[]): Promise<ReadonlyMap<string, Uint8Array>>;
  close(): Promise<void>;
}

const PX_PER_MM = 96 / 25.4;

export async function openDesk(): Promise<Desk> {
  const running = await openBrowser(process.env);
  if ('missing' in running) throw new Error([running.missing, ...running.tried].join('\n'));
  const printer = await openPrinter(() => Promise.resolve(running));
  if ('missing' in printer) throw new Error(printer.missing);
  const page = await running.browser.newPage();
  await page.emulateMediaType('print');
  let shown = '';
  let widthMm = 0;
  return {
    browser: running.browser,
    page,
    async show(shell, sheet) {
      const wanted = roomMm(sheet);
      if (wanted !== widthMm) await page.setViewport({ width: Math.ceil(wanted * PX_PER_MM), height: 1000 });
      widthMm = wanted;
      if (shell !== shown) await page.setContent(shell, { waitUntil: 'load' });
      shown = shell;
      await page.evaluate(lay, sheet.body);
    },
    async print(shell, sheets) {
      const printed = await printer.print(shell, sheets);
      if ('failed' in printed) throw new Error(printed.failed);
      return printed;
    },
    close: () => printer.close(),
  };
}

export const across = ({ body }: Sheet): boolean => /@page [^{]*\{size:\w+ landscape/.test(body);

/** Width that the margins leave: upright the same on both papers. */
function roomMm(sheet: Sheet): number {
  if (!across(sheet)) return 190;
  return (sheet.paper === 'A4' ? 297 : 279.4) - 20;
}

async function lay(body: string): Promise<void> {
  document.body.innerHTML = body;
  await Promise.all([...document.fonts].map((font) => font.load()));
  await document.fonts.ready;
}
