/** One page of the browser that shows sheet after sheet: the shell with its styles and fonts is loaded once, the body swapped. */
import type { Browser, HTTPRequest } from 'puppeteer';
import { repeatablePdf } from './pdf-repeatable.ts';

export type Paper = 'A4' | 'Letter';

export interface Sheet {
  /** Key of the result; unique in one print. */
  readonly name: string;
  /** The document's title. */
  readonly title: string;
  /** HTML that becomes the content of the shell's body. */
  readonly body: string;
  readonly paper: Paper;
}

/** A PDF, or what is wrong with the sheet. Where the browser itself fails, the promise is rejected. */
export type SheetResult = { readonly pdf: Uint8Array } | { readonly fault: string };

export interface SheetPage {
  readonly print: (sheet: Sheet) => Promise<SheetResult>;
  readonly close: () => Promise<void>;
}

/** Loads the shell. Scripts of the page are off, and it may ask for nothing but data: addresses. */
export async function openSheetPage(browser: Browser, shellHtml: string): Promise<SheetPage> {
  const page = await browser.newPage();
  const refused: string[] = [];
  await page.setJavaScriptEnabled(false);
  await page.setRequestInterception(true);
  page.on('request', (request) => answer(request, refused));
  await page.setContent(shellHtml, { waitUntil: 'load' });
  const shellFaults = (await page.evaluate(loadFonts)) as string[];
  return {
    async print(sheet) {
      const faults = [...shellFaults, ...((await page.evaluate(showing(sheet))) as string[])];
      const pdf = await page.pdf({ preferCSSPageSize: true, printBackground: true, tagged: true });
      faults.push(
        ...refused.map((url) => `it asks for ${url.slice(0, 120)}, but a sheet may only use what it carries itself`),
      );
      return faults.length > 0 ? { fault: [...new Set(faults)].join('; ') } : { pdf: repeatablePdf(pdf) };
    },
    close: () => page.close(),
  };
}

function answer(request: HTTPRequest, refused: string[]): void {
  const allowed = /^(?:data|about):/.test(request.url());
  if (!allowed) refused.push(request.url());
  // A page that closes under the request is noticed where it is printed.
  (allowed ? request.continue() : request.abort('blockedbyclient')).catch(() => undefined);
}

// The expressions below run in the browser, where this program's types don't reach: they are text.

/** A font is loaded only when used, and a missing one is replaced without a word: ask for all, and name those that fail. */
const loadFonts = `(async () => {
  const fonts = [...document.fonts];
  const results = await Promise.allSettled(fonts.map((font) => font.load()));
  await document.fonts.ready;
  return fonts.filter((_, i) => results[i].status === 'rejected')
    .map((font) => 'the font ' + font.family + ' ' + font.weight + ' cannot be read');
})()`;

/** Shows a sheet and waits for its pictures; gives the faults found. */
function showing(sheet: Sheet): string {
  return `(async ({ title, body, paper }) => {
    document.title = title;
    document.documentElement.dataset.paper = paper;
    let style = document.getElementById('sheet-paper');
    if (style === null) {
      style = document.createElement('style');
      style.id = 'sheet-paper';
      document.head.append(style);
    }
    style.textContent = '@page { size: ' + paper + ' }';
    document.body.innerHTML = body;
    const pictures = [...document.images];
    const results = await Promise.allSettled(pictures.map((picture) => picture.decode()));
    await document.fonts.ready;
    return pictures.filter((_, i) => results[i].status === 'rejected')
      .map((picture) => 'the picture ' + (picture.alt || picture.src.slice(0, 60)) + ' cannot be shown');
  })(${JSON.stringify({ title: sheet.title, body: sheet.body, paper: sheet.paper })})`;
}
