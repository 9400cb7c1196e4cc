/** What cards show of their last change: flags where it stands, a short block in words; kept while the card stays as it is. */
import { expect, test } from 'vitest';
import { changed, desk, rightHanded, TARN } from './desk.ts';

const files = rightHanded();
const crown = (text: string) =>
  changed(
    changed(text, 'machined: { crown: 49.60', 'machined: { crown: 49.50'),
    'white: { crown: 49.20',
    'white: { crown: 49.10',
  );
const RELEASE = ['--reason', 'next', '--name', 'Reed'];
const FLAG = /<b class="rev" role="img" aria-label="changed">([A-Z])<\/b>/g;
const pageOf = (tree: ReadonlyMap<string, Uint8Array>, station: string, below = '') =>
  new TextDecoder().decode(tree.get(`${below}models/tarn/${station}.html`));
const flagsOf = (page: string) => [...page.matchAll(FLAG)].map(([, letter]) => letter);

test('flags and block on what changed, none on what did not, and both stay through the next release', async () => {
  const { host, platen } = desk(files);
  const cards = async (...more: readonly string[]) => {
    const { code, err } = await platen('cards', 'tarn', '--no-pdf', '--out', 'o', ...more);
    expect(code, err).toBe(0);
    return host.published.get('o')!;
  };
  // Never released: nothing to hold it against.
  expect(flagsOf(pageOf(await cards(), 'machining-top'))).toEqual([]);
  expect((await platen('release', 'tarn', ...RELEASE)).code).toBe(0);
  const before = pageOf(await cards(), 'machining-top');
  expect(flagsOf(before)).toEqual([]);

  host.replace(TARN, crown(files[TARN]!).replace('revision: C', 'revision: D'));
  const drafts = await cards();
  const top = pageOf(drafts, 'machining-top');
  expect(new Set(flagsOf(top))).toEqual(new Set(['D']));
  // The key number and its check, both flagged; the block says it once.
  expect(top).toMatch(/<p class="key-label"><b class="rev"[^>]*>D<\/b> Body at the crown/);
  expect(top).toMatch(/<b class="check-what"><b class="rev"[^>]*>D<\/b> Thickness at the crown/);
  const block = /<section class="changed">([\s\S]*?)<\/section>/.exec(top)![1]!;
  expect(block).toContain('Changed since revision C');
  expect(block.match(/49\.38–49\.62/g)).toHaveLength(1);
  expect(flagsOf(pageOf(drafts, 'sizing'))).toEqual([]);
  expect(pageOf(drafts, 'sizing')).not.toContain('class="changed"');

  const old = ['--under-way', 'finish-on-old', '--old-until', '2026-12-31'];
  expect((await platen('release', 'tarn', ...RELEASE, ...old)).code).toBe(0);
  const posted = pageOf(await cards('--released', 'tarn@D'), 'machining-top', 'tarn@D/');
  expect(flagsOf(posted)).toEqual(flagsOf(top));

  // E changes the press alone: the top keeps what it showed, with the letter it became what it is with.
  const text = new TextDecoder().decode(host.read(TARN)).replace('revision: D', 'revision: E');
  const noted = changed(text, 'notes: { sizing:', 'notes: { press: Stack on the long side., sizing:');
  host.replace(TARN, noted);
  expect((await platen('release', 'tarn', ...RELEASE, ...old)).code).toBe(0);
  const later = await cards('--released', 'tarn@E');
  expect(flagsOf(pageOf(later, 'machining-top', 'tarn@E/'))).toEqual(flagsOf(top));
  expect(pageOf(later, 'machining-top', 'tarn@E/')).toContain('Changed since revision C');
  expect(new Set(flagsOf(pageOf(later, 'press', 'tarn@E/')))).toEqual(new Set(['E']));
});
