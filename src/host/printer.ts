/** Paper: prints sheets of HTML to PDF with one browser, started again once if it dies on the way. */
import type { Browser } from 'puppeteer';
import type { Running } from './browser.ts';
import type { NoPrinter } from './host.ts';
import { errorLine } from './paths.ts';
import { openSheetPage, type Sheet, type SheetPage, type SheetResult } from './sheet-page.ts';

export type { Paper, Sheet } from './sheet-page.ts';

/** PDF by the sheet's name, all of them; or one sentence that names the sheet that could not be printed. */
export type Printed = ReadonlyMap<string, Uint8Array> | { readonly failed: string };

export interface Printer {
  /**
   * Prints every sheet into the shell's body. The same sheet from the same browser gives the same bytes, whatever was
   * printed before it. `onSheet` hears each name once it is done. One print at a time.
   */
  print(shellHtml: string, sheets: Iterable<Sheet>, onSheet?: (name: string) => void): Promise<Printed>;
  close(): Promise<void>;
  /** The browser's name and version. */
  readonly version: string;
}

export async function openPrinter(open: () => Promise<Running | NoPrinter>): Promise<Printer | NoPrinter> {
  const opened = await open();
  if ('missing' in opened) return opened;
  let { browser } = opened;
  const relaunch = async (): Promise<Browser> => {
    await stop(browser);
    browser = await opened.launch();
    return browser;
  };
  return {
    version: await browser.version(),
    print: (shellHtml, sheets, onSheet) => printAll({ current: () => browser, relaunch }, shellHtml, sheets, onSheet),
    close: () => stop(browser),
  };
}

interface Restartable {
  readonly current: () => Browser;
  readonly relaunch: () => Promise<Browser>;
}

async function printAll(
  browser: Restartable,
  shellHtml: string,
  sheets: Iterable<Sheet>,
  onSheet: ((name: string) => void) | undefined,
): Promise<Printed> {
  const pdfs = new Map<string, Uint8Array>();
  const pages = sheetPages(browser, shellHtml);
  try {
    for (const sheet of sheets) {
      if (pdfs.has(sheet.name)) throw new Error(`two sheets of one print are named ${sheet.name}`);
      const result = await pages.print(sheet);
      if ('fault' in result) return { failed: `The sheet ${sheet.name} could not be printed: ${result.fault}.` };
      pdfs.set(sheet.name, result.pdf);
      onSheet?.(sheet.name);
    }
    return pdfs;
  } finally {
    await pages.close();
  }
}

/** The page in use. The first failure of the browser costs a relaunch, and the sheet is tried once more; the second is told. */
function sheetPages(
  browser: Restartable,
  shellHtml: string,
): { print: (sheet: Sheet) => Promise<SheetResult>; close: () => Promise<void> } {
  let page: SheetPage | undefined;
  let restarted = false;
  const attempt = async (sheet: Sheet): Promise<SheetResult> => {
    page ??= await openSheetPage(browser.current(), shellHtml);
    return page.print(sheet);
  };
  const print = async (sheet: Sheet): Promise<SheetResult> => {
    try {
      return await attempt(sheet);
    } catch (error) {
      if (restarted) return { fault: `the browser failed twice (${errorLine(error)})` };
      restarted = true;
      page = undefined;
    }
    try {
      await browser.relaunch();
    } catch (error) {
      return { fault: `the browser stopped and does not start again (${errorLine(error)})` };
    }
    return print(sheet);
  };
  return { print, close: async () => page?.close().catch(() => undefined) };
}

/** A browser that doesn't close in good order is ended with all its helpers: they form a process group of their own. */
async function stop(browser: Browser): Promise<void> {
  try {
    await browser.close();
  } catch {
    killGroup(browser.process()?.pid);
  }
}

function killGroup(pid: number | undefined): void {
  if (pid === undefined) return;
  try {
    process.kill(process.platform === 'win32' ? pid : -pid, 'SIGKILL');
  } catch {
    // It has gone by itself.
  }
}
