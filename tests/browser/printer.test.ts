import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser, type Running } from '../../src/host/browser.ts';
import { openPrinter, type Printed, type Printer, type Sheet } from '../../src/host/printer.ts';
import { shipped } from '../../src/host/shipped.ts';

const fontFile = shipped(
  'npm:@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-400-normal.woff2',
);
const font = Buffer.from(fontFile ?? []).toString('base64');
const shell = `<!doctype html><html lang="en"><head><meta charset="utf-8"><style>
  @font-face { font-family: Card; src: url(data:font/woff2;base64,${font}) format('woff2') }
  @page { margin: 12mm } body { font-family: Card } .next { break-before: page }
</style></head><body></body></html>`;

function sheet(name: string, more: Partial<Sheet> = {}): Sheet {
  const rows = Array.from({ length: 12 }, (_, i) => `<tr><td>${name} ${i}<td>17.4 mm</tr>`).join('');
  const body = `<h1>${name}</h1><table><tr><th scope="col">Point<th scope="col">Limit</tr>${rows}</table>
    <svg viewBox="0 0 9 9" width="90" role="img" aria-label="plan"><path d="M0 0L9 9" stroke="#000"/></svg>`;
  return { name, title: `Card ${name}`, body, paper: 'A4', ...more };
}

interface Read {
  readonly pages: number;
  readonly sizePt: readonly number[];
  readonly title: unknown;
  readonly text: string;
}

async function readPdf(bytes: Uint8Array | undefined): Promise<Read> {
  const pdf = await getDocument({ data: Uint8Array.from(bytes ?? []), verbosity: 0 }).promise;
  const page = await pdf.getPage(1);
  const { items } = await page.getTextContent();
  const { info } = await pdf.getMetadata();
  const text = items.map((item) => ('str' in item ? item.str : '')).join(' ');
  const title = 'Title' in info ? info.Title : undefined;
  return { pages: pdf.numPages, sizePt: page.view.slice(2), title, text };
}

function pdfsOf(printed: Printed): ReadonlyMap<string, Uint8Array> {
  if ('failed' in printed) throw new Error(printed.failed);
  return printed;
}

const print = async (printer: Printer, sheets: readonly Sheet[]): Promise<ReadonlyMap<string, Uint8Array>> =>
  pdfsOf(await printer.print(shell, sheets));

/** A browser that starts here. Without one these tests fail, and say how to get it: paper is part of the job. */
async function running(): Promise<Running> {
  const answer = await openBrowser(process.env);
  if ('missing' in answer) throw new Error([answer.missing, ...answer.tried].join('\n'));
  return answer;
}

async function printerOn(opened: Running): Promise<Printer> {
  const printer = await openPrinter(() => Promise.resolve(opened));
  if ('missing' in printer) throw new Error(printer.missing);
  return printer;
}

/** Kills the browser with all its helpers: some installed ones are started by a shell script that stays. */
function kill(browser: Running['browser']): void {
  const pid = browser.process()?.pid;
  if (pid !== undefined) process.kill(process.platform === 'win32' ? pid : -pid, 'SIGKILL');
}

describe('printer', () => {
  let printer: Printer;
  beforeAll(async () => {
    printer = await printerOn(await running());
  }, 60_000);
  afterAll(() => printer.close());

  it('names its version', () => {
    expect(printer.version).toMatch(/^\w*Chrome\/\d+\./);
  });

  it('prints each sheet with its size, title and text', async () => {
    const pdfs = await print(printer, [sheet('press'), sheet('sander', { paper: 'Letter' }), sheet('saw')]);
    expect([...pdfs.keys()]).toEqual(['press', 'sander', 'saw']);
    const [press, sander, saw] = await Promise.all([...pdfs.values()].map(readPdf));
    // ISO 216: A4 is 210 × 297 mm; ANSI/ASME Y14.1: A (letter) is 8.5 × 11 in. 72 pt to the inch; browsers round A4 to whole pixels.
    const a4 = [(210 / 25.4) * 72, (297 / 25.4) * 72];
    for (const read of [press, saw]) {
      expect(Math.max(...a4.map((pt, i) => Math.abs(pt - (read?.sizePt[i] ?? 0))))).toBeLessThan(0.75);
    }
    expect(sander?.sizePt).toEqual([612, 792]);
    expect([press?.title, sander?.title]).toEqual(['Card press', 'Card sander']);
    expect([press?.pages, press?.text.includes('17.4 mm'), saw?.text.includes('press')]).toEqual([1, true, false]);
  });

  it('counts a second page', async () => {
    const two = sheet('two', { body: '<p>one</p><p class="next">two</p>' });
    expect((await readPdf((await print(printer, [two])).get('two'))).pages).toBe(2);
  });

  it('gives the same bytes whatever was printed before, and in another browser process', async () => {
    const [a, b, c] = [sheet('a'), sheet('b', { paper: 'Letter' }), sheet('c')];
    const other = await printerOn(await running());
    try {
      const first = await print(printer, [a, b, c]);
      const rounds = [await print(printer, [c, b]), await print(other, [b]), await print(other, [a, b, c])];
      for (const round of rounds)
        for (const [name, pdf] of round) expect(Buffer.compare(pdf, first.get(name) ?? pdf.slice(1))).toBe(0);
    } finally {
      await other.close();
    }
  }, 60_000);

  it('tells each sheet as it is done, and takes no two of one name', async () => {
    const done: string[] = [];
    await printer.print(shell, [sheet('a'), sheet('b')], (name) => done.push(name));
    expect(done).toEqual(['a', 'b']);
    await expect(printer.print(shell, [sheet('a'), sheet('a')])).rejects.toThrow('two sheets');
  });

  it('prints nothing when there are no sheets', async () => {
    expect(await printer.print(shell, [])).toEqual(new Map());
  });

  it.each([
    ['a picture from the network', '<img src="http://192.0.2.1/x.png" alt="far">', 'http://192.0.2.1/x.png'],
    ['a file of this machine', '<img src="file:///etc/hostname" alt="near">', 'the picture near'],
    ['a style from the network', '<style>@import "http://192.0.2.1/x.css";</style>', 'http://192.0.2.1/x.css'],
    ['a picture that cannot be read', '<img src="data:image/png;base64,AAAA" alt="broken">', 'the picture broken'],
  ])('refuses a sheet with %s', async (_, body, named) => {
    const printed = await printer.print(shell, [sheet('fine'), sheet('far', { body })]);
    expect(printed).toEqual({ failed: expect.stringContaining('The sheet far could not be printed') });
    expect(printed).toEqual({ failed: expect.stringContaining(named) });
    // The printer is as good as before.
    expect((await print(printer, [sheet('fine')])).size).toBe(1);
  });

  it('refuses a shell whose font cannot be read', async () => {
    const printed = await printer.print(shell.replace(font, 'AAAA'), [sheet('a')]);
    expect(printed).toEqual({ failed: expect.stringContaining('the font Card') });
  });

  it('runs no script of a sheet', async () => {
    const body =
      '<p id="x">still</p><img alt="" src="data:," onerror="x.textContent=1"><svg onload="x.textContent=2"></svg>';
    const plain = body.replace(/<img[^>]*>/, '');
    expect((await readPdf((await print(printer, [sheet('s', { body: plain })])).get('s'))).text).toBe('still');
    expect(
      await printer.print(shell.replace('<body>', '<body onload="document.title=1"><script>throw 1</script>'), [
        sheet('s'),
      ]),
    ).toBeInstanceOf(Map);
  });
});

describe('printer whose browser dies', () => {
  it('starts it again once and prints everything', { timeout: 60_000 }, async () => {
    const first = await running();
    const printer = await printerOn(first);
    const killOnce = (name: string): unknown => name === 'a' && kill(first.browser);
    const pdfs = pdfsOf(await printer.print(shell, [sheet('a'), sheet('b'), sheet('c')], killOnce));
    expect([...pdfs.keys()]).toEqual(['a', 'b', 'c']);
    expect((await print(printer, [sheet('d')])).size).toBe(1);
    await printer.close();
  });

  it('says so when it dies twice', { timeout: 60_000 }, async () => {
    const first = await running();
    let { browser } = first;
    const launch = async (): Promise<typeof browser> => (browser = await first.launch());
    const printer = await printerOn({ browser, launch });
    const printed = await printer.print(shell, [sheet('a'), sheet('b'), sheet('c')], () => kill(browser));
    expect(printed).toEqual({
      failed: expect.stringContaining('The sheet c could not be printed: the browser failed twice'),
    });
    await printer.close();
  });

  it('says so when it does not start again', { timeout: 60_000 }, async () => {
    const first = await running();
    const printer = await printerOn({ browser: first.browser, launch: () => Promise.reject(new Error('gone')) });
    const printed = await printer.print(shell, [sheet('a'), sheet('b')], () => kill(first.browser));
    expect(printed).toEqual({
      failed: expect.stringContaining('The sheet b could not be printed: the browser stopped'),
    });
    await printer.close();
  });
});
