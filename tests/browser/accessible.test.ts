/** HTML pages of the tree under the rules of axe: in each language, some of each kind, or with CARDS_ALL=1 all. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openTree } from './measure/accessible.ts';
import { openDesk, type Desk } from './measure/desk.ts';
import { languages, makeEditions, type Edition } from './measure/editions.ts';

const ALL = process.env['CARDS_ALL'] !== undefined;
/** Pages that are a list of others or lie alone, and one or two of the cards, with their drawings. */
const SOME = [
  'index.html',
  'models/ness/index.html',
  'models/tarn/machining-top-left.html',
  'models/carr/lamination.html',
  // With a picture in it.
  'models/tarn/trim-sawing.html',
  'stations/press/sheet.html',
  'checks.html',
];

let desk: Desk;
let edition: ReturnType<typeof makeEditions>;

beforeAll(async () => {
  desk = await openDesk();
  edition = makeEditions();
}, 300_000);

afterAll(() => desk.close());

async function faultsIn(files: Edition['files'], taken: (path: string, index: number) => boolean): Promise<string[]> {
  const tree = await openTree(desk.browser, files);
  const found: string[] = [];
  const paths = [...files.keys()].filter((path) => path.endsWith('.html')).filter(taken);
  expect(paths.length).toBeGreaterThan(0);
  for (const path of paths) found.push(...(await tree.faultsOf(path)).map((fault) => `${path}: ${fault}`));
  await tree.close();
  return found;
}

describe.each(languages)('pages in %s', (language) => {
  test('cards, lists, station sheets, reference', { timeout: 3_600_000 }, async () => {
    const { files } = edition('A4', language, 'as they are');
    for (const path of SOME) expect([...files.keys()]).toContain(path);
    expect(await faultsIn(files, (path) => ALL || SOME.includes(path))).toEqual([]);
  });

  test('chart forms', { timeout: 3_600_000 }, async () => {
    const { files } = edition('A4', language, 'as they are').charts;
    expect(await faultsIn(files, (_, i) => ALL || i % 40 === 0)).toEqual([]);
  });
});
