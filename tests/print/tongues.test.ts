/** Cards in two languages: one code, numbers with the language's mark, texts of safety never blank and never unsaid. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { isScalar, parseDocument, visit } from 'yaml';
import { compileAll, printCompiled } from '../../src/compile.ts';
import { memoryHost } from '../../src/host/memory.ts';
import type { PrintWish } from '../../src/plant-texts.ts';
import { inLanguage } from '../../src/units/in-language.ts';
import { root } from '../cards/demo.ts';
import { sample } from '../cases/workspace.ts';

const ON = '2026-11-25';
const PLANT = 'models/plant/plant.yaml';
const ENGLISH = readFileSync(join(root, 'templates', 'words', 'en.yaml'), 'utf8');

/** A language of our own, every sentence marked: a translation that anybody can check. */
const marked = (() => {
  const doc = parseDocument(ENGLISH);
  visit(doc, {
    Pair(_, { key, value }) {
      if (isScalar(key) && ['language', 'decimal', 'literals'].includes(String(key.value))) return visit.SKIP;
      if (isScalar(value) && typeof value.value === 'string') value.value = `x~${value.value}`;
      return undefined;
    },
  });
  doc.set('language', 'xx');
  doc.set('translation-of', 'en');
  doc.set('decimal', ',');
  return doc.toString({ lineWidth: 0 });
})();

function printed(plant: (text: string) => string, words = marked, wish: PrintWish = {}) {
  const files = sample();
  files[PLANT] = plant(files[PLANT]!);
  files['templates/words/xx.yaml'] = words;
  const host = memoryHost(files);
  const compiled = compileAll(host, ON);
  expect(compiled.models.flatMap(({ findings }) => findings)).toEqual([]);
  const out = printCompiled(host, compiled, ON, wish);
  const page = (path: string) => String(out.files.get(path));
  return { ...out, page, sizing: page('models/tarn/sizing.html') };
}

const languages =
  (list: string, more = '') =>
  (text: string) =>
    text.replace('plant: { ', `plant: { languages: [${list}], ${more}`);

describe('a card in two languages', () => {
  const both = printed(languages('en, xx'));
  const one = printed((text) => text);

  test('is two cards in one, under one code', () => {
    const codes = (page: string) => [...page.matchAll(/class="code-text">([^<]+)</g)].map(([, code]) => code);
    expect(codes(both.sizing)).toEqual([...codes(one.sizing), ...codes(one.sizing)]);
    expect([...both.sizing.matchAll(/<article class="card" lang="(\w+)"/g)].map(([, language]) => language)).toEqual([
      'en',
      'xx',
    ]);
    expect(both.files.has('models/tarn/sizing-plan.xx.svg')).toBe(true);
  });

  test('says every sentence in each, and its numbers with the mark of each', () => {
    const [first, second] = both.sizing.split('lang="xx"') as [string, string];
    expect(first.includes('x~')).toBe(false);
    expect(second.includes('x~')).toBe(true);
    const figures = (page: string) => [...page.matchAll(/class="fig">([^<]+)</g)].map(([, text]) => text!);
    expect(figures(second)).toEqual(figures(first).map((text) => inLanguage(text, ',').replace(' to ', ' x~to ')));
    expect(figures(first).some((text) => /\d\.\d/.test(text))).toBe(true);
  });

  test('has no id twice on a page', () => {
    const ids = [...both.sizing.matchAll(/ id="([^"]+)"/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  test('may be asked for whatever the plant says, and a station may have its own', () => {
    expect(printed((text) => text, marked, { languages: ['xx'] }).sizing).toMatch(/<html lang="xx">[^]*lang="xx"/);
    const own = printed((text) => text.replace('  sizing:\n', '  sizing:\n    languages: [xx]\n'));
    expect(own.sizing.includes('<article class="card" lang="xx"')).toBe(true);
    expect(own.page('models/tarn/press.html').includes('<article class="card" lang="en"')).toBe(true);
  });

  test('goes by the paper asked for', () => {
    expect(printed((text) => text, marked, { paper: 'Letter' }).sizing.includes('size:Letter')).toBe(true);
  });
});

describe('texts of safety in a translation', () => {
  const NOT_REVIEWED = 'x~Translation not reviewed';

  test('say that nobody went over them, until the plant names who did', () => {
    const found = printed(languages('xx'));
    expect(found.sizing.includes(NOT_REVIEWED)).toBe(true);
    expect(found.findings).toMatchObject([{ id: 'translation-not-reviewed', severity: 'caution' }]);
    expect(found.findings[0]!.where).toMatch(/^models\/plant\/plant\.yaml:\d+:\d+$/);
    const code = /texts: (\S+) \}/.exec(found.findings[0]!.mend)![1]!;
    const reviewed = languages('xx', `reviewed: { xx: { name: R. Sten, date: 2026-11-20, texts: ${code} } }, `);
    expect(printed(reviewed).findings).toEqual([]);
    expect(printed(reviewed).sizing.includes(NOT_REVIEWED)).toBe(false);
    // Other texts than those gone over.
    const other = printed(reviewed, marked.replace('x~Boards and stacks', 'x~Light boards and stacks'));
    expect(other.findings[0]!.what.includes('R. Sten')).toBe(true);
    expect(other.sizing.includes(NOT_REVIEWED)).toBe(true);
    // A sentence that is no text of safety needs no second look.
    expect(printed(reviewed, marked.replace('x~page {page}', 'x~sheet {page}')).findings).toEqual([]);
  });

  test('that are missing stand in the original, and say so in both languages', () => {
    const found = printed(languages('xx'), marked.replace(/^  lockout: .*\n/m, ''));
    expect(found.sizing.includes('X~Not translated, ask the lead · Not translated, ask the lead: ')).toBe(true);
    expect(/<span lang="en">Tool change or jam: lock out/.test(found.sizing)).toBe(true);
    expect(found.findings.map(({ id, severity }) => `${severity} ${id}`).toSorted()).toEqual([
      'caution translation-not-reviewed',
      'caution word-missing',
    ]);
  });
});

describe('what is wrong with a language', () => {
  test('a word that is missing is an error in its file', () => {
    const { findings } = printed(languages('xx'), marked.replace(/^  decides: .*\n/m, ''));
    expect(findings.find(({ id }) => id === 'word-missing')).toMatchObject({ severity: 'error' });
    expect(findings.find(({ id }) => id === 'word-missing')!.where).toMatch(/^templates\/words\/xx\.yaml:/);
  });

  test('a language nobody wrote is an error where it is asked for', () => {
    const { findings } = printed(languages('en, xy'));
    expect(findings).toMatchObject([{ id: 'language-without-words', severity: 'error' }]);
    expect(findings[0]!.where).toMatch(/^models\/plant\/plant\.yaml:/);
  });
});

test('a thing is called by its name in the language, where it has one', () => {
  const { sizing, page } = printed(
    (text) => `${languages('xx')(text)}\nnames: { xx: [{ name: Wide belt, called: Ancha }] }\n`,
    marked,
  );
  expect(sizing.includes('Ancha')).toBe(true);
  expect(page('models/tarn/press.html').includes('Ancha')).toBe(false);
});

test.each([
  ['.642', '0,642'],
  ['-.002', '-0,002'],
  ['16.40', '16,40'],
  ['1 3/8', '1 3/8'],
  ['7 lb 3.5 oz', '7 lb 3,5 oz'],
  ['12', '12'],
])('%s is %s with a comma', (point, comma) => {
  expect(inLanguage(point, ',')).toBe(comma);
  expect(inLanguage(point, '.')).toBe(point);
});
