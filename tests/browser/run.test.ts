/** A run on paper and as pages: whole on its sheets, its labels read by a general library, open to readers who can't see them. */
import { createCanvas, loadImage } from '@napi-rs/canvas';
import jsQR from 'jsqr';
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

/** Every code of a sheet as it is laid out for paper, each photographed by itself and drawn four times as large for the reader. */
async function codesOf({ page }: Desk): Promise<(string | undefined)[]> {
  const codes: (string | undefined)[] = [];
  for (const element of await page.$$('.qr')) {
    const image = await loadImage(Buffer.from(await element.screenshot()));
    const [width, height] = [4 * image.width, 4 * image.height];
    const context = createCanvas(width, height).getContext('2d');
    context.imageSmoothingEnabled = false;
    context.drawImage(image, 0, 0, width, height);
    codes.push(jsQR.default(context.getImageData(0, 0, width, height).data, width, height)?.data);
  }
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

  test('has a run sheet, labels, a traveller an order, a first-piece report a set-up', async () => {
    expect(output.sheets.map(({ name }) => name).toSorted((a, b) => (a < b ? -1 : 1))).toEqual([
      // No time of a changeover is given here: what has a jig or a fixture is set up all the same.
      'first-pieces/tarn/router-left.pdf',
      'first-pieces/tarn/router.pdf',
      'first-pieces/tarn/saw-left.pdf',
      'first-pieces/tarn/saw.pdf',
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
    await desk.show(
      output.shell,
      output.sheets.find(({ name }) => name === 'labels.pdf')!,
    );
    // In the sequence of the run, the cap before its back.
    const codes = await codesOf(desk);
    expect(codes.filter((_code, i) => i % 2 === 0).map((code) => code?.replace(/ CAP$/, ''))).toEqual(
      codes.filter((_code, i) => i % 2 === 1).map((code) => code?.replace(/ BACK$/, '')),
    );
    expect(new Set(codes)).toEqual(new Set(wanted));
    expect(codes).toHaveLength(wanted.length);
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
