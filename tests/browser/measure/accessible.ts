/** HTML pages as a browser opens them from the tree, under the rules of axe. */
import axe from 'axe-core';
import type { Browser, HTTPRequest, Page } from 'puppeteer';

type Files = ReadonlyMap<string, string | Uint8Array>;

const ROOT = 'http://cards.invalid/';

export interface TreePage {
  /** Violations on the page at a path of the tree, and links that lead nowhere. */
  faultsOf(path: string): Promise<string[]>;
  close(): Promise<void>;
}

/** A page whose every request is answered from the files of one tree. */
export async function openTree(browser: Browser, files: Files): Promise<TreePage> {
  const page = await browser.newPage();
  await page.setRequestInterception(true);
  const lost: string[] = [];
  page.on('request', (request) => answer(request, files, lost));
  return {
    async faultsOf(path) {
      lost.length = 0;
      await page.goto(ROOT + path, { waitUntil: 'load' });
      return [...(await violations(page)), ...lost.map((name) => `it asks for ${name}, which is not in the tree`)];
    },
    close: () => page.close(),
  };
}

/** Every rule of axe, best practices too. */
export async function violations(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  const found = (await page.evaluate('axe.run(document, { resultTypes: ["violations"] })')) as axe.AxeResults;
  return found.violations.map(
    ({ id, help, nodes }) =>
      `${id}: ${help}: ${nodes.length} × ${nodes[0]!.target.join(' ')} ${nodes[0]!.html.slice(0, 160)}`,
  );
}

function answer(request: HTTPRequest, files: Files, lost: string[]): void {
  // What a page carries inside itself is asked of nobody.
  if (request.url().startsWith('data:')) {
    request.continue().catch(() => undefined);
    return;
  }
  const path = decodeURIComponent(request.url().slice(ROOT.length));
  const body = files.get(path);
  if (body === undefined && path !== 'favicon.ico') lost.push(path);
  const contentType =
    { html: 'text/html', css: 'text/css', svg: 'image/svg+xml' }[path.split('.').at(-1)!] ?? 'font/woff2';
  // A page that closes under the request is noticed where it is looked at.
  request
    .respond(
      body === undefined ? { status: 404 } : { body: typeof body === 'string' ? body : Buffer.from(body), contentType },
    )
    .catch(() => undefined);
}
