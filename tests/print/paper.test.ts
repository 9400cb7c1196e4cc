/** The fixture on paper, by the real browser, read back: whole pages, each with its foot, and nothing shrunk. */
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { expect, it } from 'vitest';
import { openBrowser } from '../../src/host/browser.ts';
import { openPrinter } from '../../src/host/printer.ts';
import { printAll } from '../../src/print/print.ts';
import { assets, input, line, name, plan, posting, richCard, stack } from './fixture.ts';

const long = (text: string) => name(`${text} ${text} ${text}`);
const cases = {
  rich: richCard(),
  short: richCard({ drawings: [stack], steps: richCard().steps.slice(0, 2), tables: [] }),
  'with names three times as long': richCard({
    model: long('Tarn'),
    station: long('Sizing, wide belt'),
    finishNames: [long('amber shaded'), long('blue clear')],
    decides: long('department lead'),
    notes: [name('unbroken'.repeat(40))],
    tools: [{ role: line('fixture.machine'), name: name('unbroken'.repeat(40)) }],
    steps: [line('fixture.step-take', { pair: name('unbroken'.repeat(40)) })],
    drawings: [{ ...plan, scale: 1 }],
  }),
};

interface PageFacts {
  readonly text: string;
  readonly size: readonly [number, number];
  /** Points of paper per millimetre of a drawing, of every drawing on the page. */
  readonly scales: readonly number[];
}

async function pagesOf(pdf: Uint8Array): Promise<PageFacts[]> {
  const document = await getDocument({ data: new Uint8Array(pdf), verbosity: 0 }).promise;
  return Promise.all(
    Array.from({ length: document.numPages }, async (_, i) => {
      const page = await document.getPage(i + 1);
      const { items } = await page.getTextContent();
      const [, , width = 0, height = 0] = page.view;
      const text = items
        .map((item) => ('str' in item ? item.str : ''))
        .join(' ')
        .replace(/\s+/g, ' ');
      return { text, size: [width, height] as const, scales: barLengths(await page.getOperatorList()) };
    }),
  );
}

/** Lengths in points of straight runs of 100 drawing units: the scale bar. */
function barLengths({ fnArray, argsArray }: { fnArray: number[]; argsArray: unknown[][] }): number[] {
  const stack: number[] = [];
  const found: number[] = [];
  let factor = 1;
  fnArray.forEach((operation, i) => {
    const args = argsArray[i] ?? [];
    if (operation === OPS.save) stack.push(factor);
    if (operation === OPS.restore) factor = stack.pop() ?? 1;
    if (operation === OPS.transform) factor *= Math.hypot(Number(args[0]), Number(args[1]));
    const box = operation === OPS.constructPath ? (args[2] as ArrayLike<number> | undefined) : undefined;
    if (!box) return;
    const [x0 = 0, y0 = 0, x1 = 0, y1 = 0] = Array.from(box);
    const [wide, high] = [x1 - x0, y1 - y0];
    if (Math.min(wide, high) < 1e-6 && Math.abs(Math.max(wide, high) - 100) < 1e-3)
      found.push(Math.max(wide, high) * factor);
  });
  return found;
}

it.each(['A4', 'Letter'] as const)(
  'prints on %s, whole and true',
  async (paper) => {
    const sheets = Object.entries(cases).map(([title, card]) => {
      const out = printAll(input([card], { paper }), assets());
      expect(out.findings).toEqual([]);
      const sheet = out.sheets.find(({ name }) => name === 'models/tarn/sizing.pdf');
      if (!sheet) throw new Error('the card has no sheet');
      return { shell: out.shell, sheet: { ...sheet, name: title } };
    });
    const printer = await openPrinter(() => openBrowser(process.env));
    if ('missing' in printer) throw new Error(`no browser: ${printer.missing}`);
    const printed = await printer.print(
      sheets[0]?.shell ?? '',
      sheets.map(({ sheet }) => sheet),
    );
    await printer.close();
    if ('failed' in printed) throw new Error(printed.failed);
    let bars = 0;
    for (const [title, card] of Object.entries(cases)) {
      const pages = await pagesOf(printed.get(title) ?? new Uint8Array());
      expect(pages.length, title).toBeLessThanOrEqual(5);
      const [width, height] = paper === 'A4' ? [595.28, 841.89] : [612, 792];
      pages.forEach((page, i) => {
        expect(Math.abs(page.size[0] - width), title).toBeLessThan(0.5);
        expect(Math.abs(page.size[1] - height), title).toBeLessThan(0.5);
        const foot = `page ${i + 1} of ${pages.length}`;
        for (const part of [
          foot,
          posting.code,
          // A long name is cut short in the foot: its whole length stands at the head.
          card.station.text.slice(0, 11),
          card.model.text.slice(0, 11),
          'DRAFT – not for the floor',
          'stop and ask the lead',
        ]) {
          expect(page.text, `${title}, ${foot}`).toContain(part);
        }
        for (const length of page.scales) expect((length / 72) * 25.4, title).toBeCloseTo(100, 1);
        bars += page.scales.length;
      });
      if (title !== 'with names three times as long') {
        for (const part of ['16.30–16.50', 'When it is out', 'Largest less smallest', 'Order', 'Name'])
          expect(pages[0]?.text, title).toContain(part);
      }
    }
    expect(bars).toBeGreaterThan(0);
  },
  60_000,
);
