/** A run on paper and as pages: whole on its sheets, its labels read by a general library, open to readers who can't see them. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openTree } from './measure/accessible.ts';
import { openDesk, type Desk } from './measure/desk.ts';
import { readPaper, type PaperPage } from './measure/paper.ts';
import { codesIn, type View } from './measure/qr.ts';
import { readPdf } from './read-pdf.ts';
import { BODIES, printedRun } from './run-of-sample.ts';

/** Where a code stands beside its number, on paper. */
function codesBeside(pages: readonly PaperPage[]): View[] {
  return pages.flatMap(({ texts }, i) =>
    texts
      .filter(({ text }) => BODIES.includes(text))
      .map(({ quad }) => {
        const [left, top] = [Math.min(...quad.map(({ x }) => x)), Math.min(...quad.map(({ y }) => y))];
        return { page: i + 1, xMm: left - 33, yMm: top - 3, widthMm: 32.5, heightMm: 34 };
      }),
  );
}

let desk: Desk;
beforeAll(async () => void (desk = await openDesk()), 120_000);
afterAll(() => desk.close());

describe.each([
  ['A4', 'en', 'Run sheet', 'no model "tern"'],
  ['Letter', 'es', 'Hoja de corrida', 'no model "tern"'],
] as const)('a run on %s in %s', (paper, language, title, refused) => {
  let output: Awaited<ReturnType<typeof printedRun>>['output'];
  let pdfs: ReadonlyMap<string, Uint8Array>;
  beforeAll(async () => {
    ({ output } = await printedRun(paper, language));
    pdfs = await desk.print(output.shell, output.sheets);
  });

  test('has a run sheet, labels, a traveller a body, a first-piece report a set-up', async () => {
    expect(output.sheets.map(({ name }) => name).toSorted((a, b) => (a < b ? -1 : 1))).toEqual([
      // No time of a changeover is given here: what has a jig or a fixture is set up all the same.
      'first-pieces/tarn/router-left.pdf',
      'first-pieces/tarn/router.pdf',
      'first-pieces/tarn/saw-left.pdf',
      'first-pieces/tarn/saw.pdf',
      'labels.pdf',
      'run-sheet.pdf',
      ...BODIES.map((body) => `travellers/${body}.pdf`),
    ]);
    const { sizesMm, pages } = await readPdf(pdfs.get('run-sheet.pdf')!);
    for (const [across] of sizesMm) expect(Math.abs(across - (paper === 'A4' ? 210 : 215.9))).toBeLessThan(0.2);
    for (const page of pages) expect(page).toContain(title);
    expect(pages.join(' ')).toContain(refused);
  });

  test('every cap and every back has its label, and every code is read', async () => {
    const wanted = BODIES.flatMap((number) => [`${number} CAP`, `${number} BACK`]);
    const pdf = pdfs.get('labels.pdf')!;
    const codes = await codesIn(pdf, codesBeside(await readPaper(pdf)));
    // In the sequence of the run, the cap before its back.
    expect(codes.filter((_code, i) => i % 2 === 0).map((code) => code?.replace(/ CAP$/, ''))).toEqual(
      codes.filter((_code, i) => i % 2 === 1).map((code) => code?.replace(/ BACK$/, '')),
    );
    expect(new Set(codes)).toEqual(new Set(wanted));
    expect(codes).toHaveLength(wanted.length);
    const text = (await readPdf(pdfs.get('labels.pdf')!)).pages.join(' ');
    for (const number of BODIES) expect(text.split(number).length - 1).toBeGreaterThanOrEqual(2);
  });

  test('a traveller carries its order, its grade and who let it through', async () => {
    const text = (await readPdf(pdfs.get('travellers/2002.pdf')!)).pages.join(' ');
    for (const part of ['2002', 'exhibition (T. Vael)', 'Tarn']) expect(text).toContain(part);
    // Of several bodies each has its own, and says which.
    const third = (await readPdf(pdfs.get('travellers/2001-3.pdf')!)).pages.join(' ');
    expect(third.split('2001-3').length - 1).toBeGreaterThanOrEqual(2);
    expect(third).not.toContain('2001-2');
  });

  test('nothing stands out of its sheet', async () => {
    for (const sheet of output.sheets.filter(({ name }) => !name.startsWith('travellers/'))) {
      await desk.show(output.shell, sheet);
      const over = await desk.page.evaluate(`(() => {
        const sheet = document.querySelector('article').getBoundingClientRect();
        return [...document.querySelectorAll('article *')]
          .filter((one) => one.getBoundingClientRect().right > sheet.right + 0.5)
          .map((one) => one.textContent.slice(0, 60));
      })()`);
      expect(over).toEqual([]);
    }
  });

  test('the pages keep the rules of axe and ask for nothing', async () => {
    const tree = await openTree(desk.browser, output.files);
    expect(await tree.faultsOf('run-sheet.html')).toEqual([]);
    expect(await tree.faultsOf('labels.html')).toEqual([]);
    await tree.close();
  });
});
