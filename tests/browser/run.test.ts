/** A run on paper and as pages: whole on its sheets, its labels read by a general library, open to readers who can't see them. */
import { createCanvas } from '@napi-rs/canvas';
import jsQR from 'jsqr';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { run } from '../../src/cli/run.ts';
import { compileAll } from '../../src/compile.ts';
import { memoryHost } from '../../src/host/memory.ts';
import { openReleases } from '../../src/releases.ts';
import type { Released } from '../../src/releases.ts';
import { makeRun, printRun } from '../../src/run-sheets.ts';
import { sample } from '../cases/workspace.ts';
import { openTree } from './measure/accessible.ts';
import { openDesk, type Desk } from './measure/desk.ts';
import { readPdf } from './read-pdf.ts';

const ON = '2026-11-27';
const LIST = `order,model,finish,grade,hand,quantity,due,lead
2001,tarn,amber-shaded,fine,right,6,2026-12-01,
2002,tarn,black-opaque,exhibition,left,1,,T. Vael
2003,tern,amber-shaded,,right,1,,
WX-2004.77,tarn,blue-clear,select,left,2,2026-12-02,
2005,tarn,amber-shaded,plain,right,1,,
`;

async function printed(paper: 'A4' | 'Letter', language: string) {
  const files = sample();
  const plant = 'models/plant/plant.yaml';
  files[plant] = files[plant]!.replace(
    /^plant: \{ /m,
    `plant: { people: [T. Vael], shift: 7.5 h, languages: [${language}], `,
  ).replace('paper: A4', `paper: ${paper}`);
  const host = memoryHost(files);
  const silent = { out: () => undefined, err: () => undefined, watched: false, host: () => host };
  const release = ['release', 'tarn', '--reason', 'first', '--name', 'T. Vael', '--on', ON];
  expect(await run(release, silent)).toBe(0);
  const [compiled, opened] = [compileAll(host, ON), openReleases(host, ON) as Released];
  const made = makeRun('orders.csv', new TextEncoder().encode(LIST), opened, compiled, ON);
  const output = printRun(host, compiled, opened, made);
  expect(output.findings.filter(({ severity }) => severity === 'error')).toEqual([]);
  return { made, output };
}

/** Every code on every page, drawn at 200 dots an inch: each that is read is painted over, until none is left. */
async function codesOn(pdf: Uint8Array): Promise<string[]> {
  const document = await getDocument({ data: Uint8Array.from(pdf), verbosity: 0 }).promise;
  const codes: string[] = [];
  for (let n = 1; n <= document.numPages; n++) {
    const page = await document.getPage(n);
    const viewport = page.getViewport({ scale: 200 / 72 });
    const [width, height] = [Math.round(viewport.width), Math.round(viewport.height)];
    const canvas = createCanvas(width, height);
    const context = canvas.getContext('2d');
    context.fillStyle = '#fff';
    context.fillRect(0, 0, width, height);
    await page.render({ canvas: canvas as never, canvasContext: context as never, viewport }).promise;
    // A label's code stands in a strip: two across, so the strip is halved.
    const strip = Math.round((16 / 25.4) * 200);
    for (let top = 0; top + strip < height; top += strip)
      for (const left of [0, width >> 1]) {
        const { data } = context.getImageData(left, top, width >> 1, 2 * strip);
        const found = jsQR.default(data, width >> 1, 2 * strip);
        if (!found) continue;
        codes.push(found.data);
        const { topLeftCorner: at, bottomRightCorner: to } = found.location;
        context.fillRect(left + at.x - 4, top + at.y - 4, to.x - at.x + 8, to.y - at.y + 8);
      }
  }
  await document.destroy();
  return codes;
}

let desk: Desk;
beforeAll(async () => void (desk = await openDesk()), 120_000);
afterAll(() => desk.close());

describe.each([
  ['A4', 'en', 'Run sheet', 'no model "tern"'],
  ['Letter', 'es', 'Hoja de corrida', 'no model "tern"'],
] as const)('a run on %s in %s', (paper, language, title, refused) => {
  let output: Awaited<ReturnType<typeof printed>>['output'];
  let pdfs: ReadonlyMap<string, Uint8Array>;
  beforeAll(async () => {
    ({ output } = await printed(paper, language));
    pdfs = await desk.print(output.shell, output.sheets);
  });

  test('has a run sheet, labels and a traveller an order', async () => {
    expect(output.sheets.map(({ name }) => name).toSorted((a, b) => (a < b ? -1 : 1))).toEqual([
      'labels.pdf',
      'run-sheet.pdf',
      'travellers/2001.pdf',
      'travellers/2002.pdf',
      'travellers/WX-2004.77.pdf',
    ]);
    const { sizesMm, pages } = await readPdf(pdfs.get('run-sheet.pdf')!);
    for (const [across] of sizesMm) expect(Math.abs(across - (paper === 'A4' ? 210 : 215.9))).toBeLessThan(0.2);
    for (const page of pages) expect(page).toContain(title);
    expect(pages.join(' ')).toContain(refused);
  });

  test('every cap and every back has its label, and every code is read', async () => {
    const numbers = [
      '2001-1',
      '2001-2',
      '2001-3',
      '2001-4',
      '2001-5',
      '2001-6',
      '2002',
      'WX-2004.77-1',
      'WX-2004.77-2',
    ];
    const wanted = numbers.flatMap((number) => [`${number} CAP`, `${number} BACK`]);
    const codes = await codesOn(pdfs.get('labels.pdf')!);
    expect(codes.toSorted((a, b) => (a < b ? -1 : 1))).toEqual(wanted.toSorted((a, b) => (a < b ? -1 : 1)));
    const text = (await readPdf(pdfs.get('labels.pdf')!)).pages.join(' ');
    for (const number of numbers) expect(text.split(number).length - 1).toBeGreaterThanOrEqual(2);
  });

  test('a traveller carries its order, its grade and who let it through', async () => {
    const text = (await readPdf(pdfs.get('travellers/2002.pdf')!)).pages.join(' ');
    for (const part of ['2002', 'exhibition (T. Vael)', 'Tarn']) expect(text).toContain(part);
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
