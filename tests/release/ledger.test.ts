/** The ledger: what was altered is always seen, and a kill at any instant leaves the old or the new. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { memoryHost } from '../../src/host/memory.ts';
import type { Entry } from '../../src/release/entries.ts';
import { enter } from '../../src/release/enter.ts';
import { entryPath, FOLDER, HEAD, headText, readLedger, sha256 } from '../../src/release/ledger.ts';
import { seeded } from '../faults/seeded.ts';
import { compileFiles } from '../host/compiled.ts';
import { emptyFolder } from '../host/folders.ts';

/** LEDGER_ALL=1: the whole of it; without it a fifth. */
const ALL = process.env['LEDGER_ALL'] !== undefined;
const FLIPS = ALL ? 400 : 80;
const KILLS = ALL ? 200 : 40;

const bytes = (text: string) => new TextEncoder().encode(text);
const record = (n: number) => ({ path: `${FOLDER}/tarn-${n}.json`, text: `{"cards":${n}}\n` });

const entry = (n: number): Entry =>
  n % 3 === 0
    ? { act: 'hold', on: '2026-11-25', name: 'A', reason: 'r', table: 'cutters', held: `c${n}` }
    : {
        act: 'release',
        on: '2026-11-25',
        name: 'A',
        reason: 'r',
        model: 'tarn',
        revision: `A${n}`,
        record: { path: record(n).path, sha256: sha256(record(n).text) },
        from: { date: '2026-11-25' },
      };

/** A ledger of so many entries, as files. */
function ledgerOf(count: number): Map<string, Uint8Array> {
  const host = memoryHost({});
  for (let n = 1; n <= count; n++) {
    const done = enter(host, () => entry(n), { ...record(n), assets: new Map([['a', bytes('font')]]) });
    if ('failed' in done) throw new Error(done.failed);
  }
  return new Map(host.list(FOLDER).map((path) => [path, host.read(path)!]));
}

const read = (files: ReadonlyMap<string, Uint8Array>) => readLedger(memoryHost(Object.fromEntries(files)));

describe('a ledger as it was written', () => {
  test('is sound, with its entries in order', () => {
    const ledger = read(ledgerOf(7));
    expect(ledger.sound && ledger.entries).toEqual([1, 2, 3, 4, 5, 6, 7].map(entry));
    expect(ledger.sound && ledger.headIsBehind).toBe(false);
    expect(read(new Map())).toMatchObject({ sound: true, entries: [] });
  });

  test('may be one ahead of its head, where a crash came between, and the next entry mends it', () => {
    const files = ledgerOf(7);
    files.set(HEAD, ledgerOf(6).get(HEAD)!);
    expect(read(files)).toMatchObject({ sound: true, headIsBehind: true });
    const host = memoryHost(Object.fromEntries(files));
    expect(enter(host, () => entry(9))).toHaveProperty('entered');
    expect(readLedger(host)).toMatchObject({ sound: true, headIsBehind: false });
    files.set(HEAD, ledgerOf(5).get(HEAD)!);
    expect(read(files)).toMatchObject({ sound: false, file: HEAD });
  });
});

describe('an altered ledger is seen', () => {
  const whole = ledgerOf(7);
  const at = (n: number) => whole.get(entryPath(n))!;
  const altered: [string, (files: Map<string, Uint8Array>) => void][] = [
    ['the last entry cut', (files) => files.delete(entryPath(7))],
    ['an entry in the middle cut', (files) => files.delete(entryPath(4))],
    ['the first entry cut', (files) => files.delete(entryPath(1))],
    ['all entries cut', (files) => [1, 2, 3, 4, 5, 6, 7].forEach((n) => files.delete(entryPath(n)))],
    ['the head cut', (files) => files.delete(HEAD)],
    ['two entries swapped', (files) => files.set(entryPath(3), at(5)).set(entryPath(5), at(3))],
    ['an entry doubled', (files) => files.set(entryPath(8), at(7))],
    [
      'an entry doubled, and the head with it',
      (files) => files.set(entryPath(8), at(7)).set(HEAD, bytes(headText(8, sha256(at(7))))),
    ],
    [
      'an entry taken out and the rest moved up',
      (files) => {
        for (let n = 4; n < 7; n++) files.set(entryPath(n), at(n + 1));
        files.delete(entryPath(7));
        files.set(HEAD, bytes(headText(6, sha256(at(7)))));
      },
    ],
    ['an entry of another ledger', (files) => files.set(entryPath(4), ledgerOf(4).get(entryPath(3))!)],
    ['a file that is none', (files) => files.set(`${FOLDER}/ledger/notes.txt`, bytes('x'))],
    ['an empty entry', (files) => files.set(entryPath(2), bytes(''))],
    ['a record swapped', (files) => files.set(record(1).path, whole.get(record(2).path)!)],
    ['a record gone', (files) => files.delete(record(2).path)],
    ['a record edited', (files) => files.set(record(2).path, bytes('{"cards":3}\n'))],
    ['a head of nonsense', (files) => files.set(HEAD, bytes('{}'))],
  ];

  test.each(altered)('%s', (_, alter) => {
    const files = new Map(whole);
    alter(files);
    const ledger = read(files);
    expect(ledger.sound).toBe(false);
    const host = memoryHost(Object.fromEntries(files));
    expect(enter(host, () => entry(8))).toHaveProperty('failed');
    expect(host.list(FOLDER)).toEqual([...files.keys()].toSorted());
  });

  test('one character anywhere in an entry, a record or the head', () => {
    const chance = seeded(17);
    // Every third entry is a hold: the file beside it belongs to no release.
    const loose = [3, 6].map((n) => record(n).path);
    const paths = [...whole.keys()].filter((path) => !path.includes('/assets/') && !loose.includes(path));
    for (let round = 0; round < FLIPS; round++) {
      const path = chance.pick(paths);
      const text = whole.get(path)!.slice();
      const place = chance.whole(text.length);
      text[place] = text[place]! ^ (1 << chance.whole(7));
      const { sound } = read(new Map(whole).set(path, text));
      expect(sound, `${path} at ${place}`).toBe(false);
    }
  });
});

describe('killed at any instant', () => {
  let code = '';
  beforeAll(() => {
    code = mkdtempSync(join(tmpdir(), 'platen-test-ledger-'));
    const [entering, creating] = compileFiles(code, ['release/enter.ts', 'host/create.ts']);
    writeFileSync(
      join(code, 'loop.mjs'),
      `import { enter } from ${JSON.stringify(entering)};
       import { createFile, replaceFile } from ${JSON.stringify(creating)};
       import { createHash } from 'node:crypto';
       import { existsSync, readFileSync, readdirSync } from 'node:fs';
       import { join } from 'node:path';
       const root = process.argv[2];
       const host = {
         list: (dir) => (existsSync(join(root, dir)) ? readdirSync(join(root, dir)).filter((one) => one.endsWith('.json')).sort().map((one) => dir + '/' + one) : []),
         read: (path) => (existsSync(join(root, path)) ? readFileSync(join(root, path)) : undefined),
         create: (path, text) => createFile(root, path, text),
         replace: (path, text) => replaceFile(root, path, text),
       };
       for (let n = host.list('models/released/ledger').length + 1; ; n++) {
         const text = JSON.stringify({ cards: 'x'.repeat(40000) + n });
         const sha256 = createHash('sha256').update(text).digest('hex');
         const path = 'models/released/tarn-' + n + '.json';
         const act = { act: 'release', on: '2026-11-25', name: 'A', reason: 'r', model: 'tarn', revision: 'R' + n, record: { path, sha256 }, from: { date: '2026-11-25' } };
         const done = enter(host, () => act, { path, text, assets: new Map([['font-' + n, 'f'.repeat(9000)]]) });
         console.log('failed' in done ? done.failed : String(n));
         if ('failed' in done) process.exit(1);
       }`,
    );
  }, 60_000);
  afterAll(() => rmSync(code, { recursive: true, force: true }));

  test(
    'again and again: every release said to be made is there whole, and at most one more',
    { timeout: 300_000 },
    async () => {
      const root = emptyFolder();
      const inRoot = (path: string) => join(root, path);
      const files = {
        list: (dir: string) =>
          readdirSync(inRoot(dir))
            .filter((name) => name.endsWith('.json'))
            .toSorted()
            .map((name) => `${dir}/${name}`),
        read: (path: string) => {
          try {
            return new Uint8Array(readFileSync(inRoot(path)));
          } catch {
            return undefined;
          }
        },
      };
      let behind = 0;
      let made = 0;
      for (let round = 0; round < KILLS; round++) {
        const child = spawn(process.execPath, [join(code, 'loop.mjs'), root], { stdio: ['ignore', 'pipe', 'inherit'] });
        let said = '';
        child.stdout.on('data', (text: Buffer) => (said += text.toString()));
        await once(child.stdout, 'data');
        await wait(Math.random() * 12);
        child.kill('SIGKILL');
        await once(child, 'close');
        const told = said.trim().split('\n').map(Number);
        expect(
          told.every((n, i) => n === made + 1 + i),
          said,
        ).toBe(true);
        const ledger = readLedger(files);
        expect(ledger).toMatchObject({ sound: true });
        if (!ledger.sound) return;
        expect(ledger.entries.length - told.at(-1)!).toBeGreaterThanOrEqual(0);
        expect(ledger.entries.length - told.at(-1)!).toBeLessThanOrEqual(1);
        if (ledger.headIsBehind) behind++;
        made = ledger.entries.length;
      }
      // The instant between entry and head was hit: the mending was tried.
      console.log(`${made} releases in ${KILLS} kills, ${behind} times between entry and head`);
    },
  );
});
