/** The change notice on paper and as a page: whole on its sheet, read at a table, its bars true, open to readers who can't see it. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { compileAll } from '../../src/compile.ts';
import { sideOfCompile } from '../../src/comparing.ts';
import { noticeOf } from '../../src/diff/notice.ts';
import { memoryHost } from '../../src/host/memory.ts';
import { printNotice, toldOf } from '../../src/notices.ts';
import { changed, ON, rightHanded, TARN } from '../diff/desk.ts';
import { openTree } from './measure/accessible.ts';
import { openDesk, type Desk } from './measure/desk.ts';
import { readPdf } from './read-pdf.ts';

const files = rightHanded();
/** A thickness, a place and a name: rows, drawings, words. */
const edited = [
  ['machined: { crown: 49.60', 'machined: { crown: 49.20'],
  ['white: { crown: 49.20', 'white: { crown: 48.80'],
  ['title: Tarn\n', 'title: Tarn of the Long Mountain Ridge\n'],
] as const;
const after = {
  ...files,
  [TARN]: edited.reduce((text, [find, replace]) => changed(text, find, replace), files[TARN]!),
};

function notice(paper: 'A4' | 'Letter', language: string) {
  const host = memoryHost(files);
  const [old, now] = [compileAll(host, ON), compileAll(memoryHost(after), ON)];
  const [before, later] = [sideOfCompile('tarn@C', old, ['tarn'], false), sideOfCompile('tarn', now, ['tarn'], false)];
  const told = toldOf(noticeOf(before.side, later.side), before.side, later.side);
  const printed = printNotice(host, old.checked, told, ON, { paper, languages: [language] });
  expect(printed.findings).toEqual([]);
  return printed;
}

let desk: Desk;
beforeAll(async () => void (desk = await openDesk()), 120_000);
afterAll(() => desk.close());

/** Least sizes of type in mm, and what stands out of the sheet. */
const LOOK = `(() => {
  const mm = 25.4 / 96;
  const sheet = document.querySelector('article').getBoundingClientRect();
  const all = [...document.querySelectorAll('article *')].filter((one) => !one.closest('svg'));
  const texts = all.filter((one) => [...one.childNodes].some((node) => node.nodeType === 3 && node.data.trim() !== ''));
  return {
    over: all.filter((one) => one.getBoundingClientRect().right > sheet.right + 0.5).map((one) => one.textContent.slice(0, 60)),
    least: Math.min(...texts.map((one) => parseFloat(getComputedStyle(one).fontSize) * mm)),
  };
})()`;

describe.each([
  ['A4', 'en', 'Change notice'],
  ['Letter', 'es', 'Aviso de cambio'],
] as const)('on %s in %s', (paper, language, title) => {
  const { shell, sheets, files: pages } = notice(paper, language);

  test('nothing stands out, no type is under 2 mm of capitals', async () => {
    await desk.show(shell, sheets[0]!);
    const { over, least } = (await desk.page.evaluate(LOOK)) as { over: string[]; least: number };
    expect(over).toEqual([]);
    // Capitals are 0.668 em high.
    expect(least * 0.668).toBeGreaterThanOrEqual(2);
  });

  test('the PDF has its sheets, its title and its foot on each page', async () => {
    const pdf = (await desk.print(shell, sheets)).get(sheets[0]!.name)!;
    const { sizesMm, pages: texts } = await readPdf(pdf);
    const width = paper === 'A4' ? 210 : 215.9;
    for (const [across] of sizesMm) expect(Math.abs(across - width)).toBeLessThan(0.2);
    expect(texts.length).toBeGreaterThan(1);
    // A page with nothing between head and foot is a page too many.
    for (const text of texts) {
      expect(text).toContain(title);
      expect(text.length).toBeGreaterThan(220);
    }
  });

  test('the page keeps the rules of axe and asks for nothing', async () => {
    const tree = await openTree(desk.browser, pages);
    expect(await tree.faultsOf('change-notice.html')).toEqual([]);
    await tree.close();
  });
});
