import fc from 'fast-check';
import {
  cpSync,
  existsSync,
  lstatSync,
  mkdirSync,
  readdirSync,
  readlinkSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { byCodeUnit } from '../../src/host/paths.ts';
import { publish } from '../../src/host/publish.ts';
import { treeFingerprint } from '../../src/host/tree.ts';
import { emptyFolder, readFiles, tree, writeFiles } from './folders.ts';

const first = { 'index.html': 'one', 'tarn/press.html': 'thirty' };
const second = { 'index.html': 'two', 'heron/press.html': 'forty' };
const deadPid = 4_194_305; // above the highest process number Linux gives out (4,194,304)

describe('publish', () => {
  it('puts the tree in place behind a relative link and keeps one build', () => {
    const out = emptyFolder();
    for (const files of [first, second]) {
      expect(publish(out, tree(files))).toEqual({ path: join(out, 'cards'), changed: true });
      expect(readFiles(join(out, 'cards'))).toEqual(files);
      expect(readlinkSync(join(out, 'cards'))).toBe(`.builds/${readdirSync(join(out, '.builds')).join()}`);
    }
  });

  it('writes nothing when the same tree is in force', () => {
    const out = emptyFolder();
    publish(out, tree(first));
    const before = statSync(join(out, 'cards', 'index.html'));
    const copy = join(emptyFolder(), 'copy');
    cpSync(out, copy, { recursive: true, verbatimSymlinks: true });
    const same = publish(out, new Map([...tree(first)].toReversed()));
    expect(same).toEqual({ path: join(out, 'cards'), changed: false });
    expect(readFiles(out)).toEqual(readFiles(copy));
    expect(readlinkSync(join(out, 'cards'))).toBe(readlinkSync(join(copy, 'cards')));
    expect(statSync(join(out, 'cards', 'index.html')).ino).toBe(before.ino);
  });

  it('replaces a card that somebody edited in place', () => {
    const out = emptyFolder();
    publish(out, tree(first));
    writeFileSync(join(out, 'cards', 'tarn/press.html'), 'ninety');
    expect(publish(out, tree(first))).toMatchObject({ changed: true });
    expect(readFiles(join(out, 'cards'))).toEqual(first);
  });

  it('leaves what else lies in the folder alone', () => {
    const out = emptyFolder();
    writeFiles(out, { 'README.md': 'kept', 'samples/a.svg': 'kept' });
    publish(out, tree(first));
    publish(out, tree(second));
    expect(readFiles(out)).toMatchObject({ 'README.md': 'kept', 'samples/a.svg': 'kept' });
  });

  it('removes what dead processes left, and nothing of a live one', () => {
    const out = emptyFolder();
    publish(out, tree(first));
    const builds = join(out, '.builds');
    const live = [`.next-${process.ppid}-00000000`, '0123456789abcdef-00000000'];
    for (const name of [`.next-${deadPid}-00000000`, 'fedcba9876543210-00000000', ...live]) {
      writeFiles(join(builds, name), { a: 'a' });
    }
    symlinkSync('.builds/0123456789abcdef-00000000', join(builds, `.next-${process.ppid}-00000000.link`));
    symlinkSync('.builds/fedcba9876543210-00000000', join(builds, `.next-${deadPid}-00000000.link`));
    publish(out, tree(second));
    const current = readlinkSync(join(out, 'cards')).replace('.builds/', '');
    expect(readdirSync(builds).toSorted(byCodeUnit)).toEqual(
      [...live, `.next-${process.ppid}-00000000.link`, current].toSorted(byCodeUnit),
    );
  });

  it.each([
    ['a folder with files of somebody else', (path: string) => writeFiles(path, { mine: 'x' })],
    ['a file', (path: string) => writeFileSync(path, 'x')],
    ['a link of somebody else', (path: string) => symlinkSync('elsewhere', path)],
  ])('refuses to replace %s', (_, make) => {
    const out = emptyFolder();
    make(join(out, 'cards'));
    const before = lstatSync(join(out, 'cards'));
    expect(publish(out, tree(first))).toEqual({ failed: expect.stringContaining('left as it was') });
    expect(lstatSync(join(out, 'cards')).ino).toBe(before.ino);
    expect(readdirSync(join(out, '.builds'))).toEqual([]);
  });

  it('answers when the folder cannot be made, and leaves no leavings when two paths collide', () => {
    const out = emptyFolder();
    writeFileSync(join(out, 'file'), '');
    expect(publish(join(out, 'file'), tree(first))).toEqual({ failed: expect.stringContaining('a file stands') });
    publish(out, tree(first));
    expect(publish(out, tree({ a: 'x', 'a/b': 'y' }))).toEqual({ failed: expect.stringContaining('a file stands') });
    expect(readFiles(join(out, 'cards'))).toEqual(first);
    expect(readdirSync(join(out, '.builds'))).toHaveLength(1);
  });

  it.each(['../a', '/a', 'a/../../b', 'a//b', './a', '', 'a\\b'])(
    'throws on the path %j: a bug of the caller',
    (path) => {
      const out = emptyFolder();
      expect(() => publish(out, tree({ [path]: 'x' }))).toThrow('not a path');
      expect(existsSync(join(out, 'cards'))).toBe(false);
      expect(readdirSync(join(out, '.builds'))).toEqual([]);
    },
  );

  it('mends a link that points at nothing', () => {
    const out = emptyFolder();
    mkdirSync(join(out, '.builds'));
    symlinkSync('.builds/0123456789abcdef-00000000', join(out, 'cards'));
    publish(out, tree(first));
    expect(readFiles(join(out, 'cards'))).toEqual(first);
  });

  it('gives back bytes as they went in', () => {
    const out = emptyFolder();
    const name = fc.stringMatching(/^[a-z]{1,6}$/);
    const files = fc.dictionary(
      fc.tuple(name, name).map(([folder, file]) => `${folder}/${file}`),
      fc.string({ unit: 'grapheme' }),
    );
    fc.assert(
      fc.property(files, (each) => {
        expect(publish(out, tree(each))).toHaveProperty('path');
        expect(readFiles(join(out, 'cards'))).toEqual({ ...each });
      }),
      { numRuns: 30 },
    );
  });
});

describe('treeFingerprint', () => {
  it('tells trees apart whose names and contents run together', () => {
    const ids = [{ ab: 'c' }, { a: 'bc' }, { a: 'b', c: '' }, { a: '', b: 'c' }, {}].map((each) =>
      treeFingerprint(tree(each)),
    );
    expect(new Set(ids).size).toBe(5);
  });

  it('does not depend on the order of the files', () => {
    expect(treeFingerprint(tree({ b: '1', a: '2' }))).toBe(treeFingerprint(tree({ a: '2', b: '1' })));
  });

  it('reads text and its bytes as the same', () => {
    expect(treeFingerprint(new Map([['a', '⌀ 3']]))).toBe(treeFingerprint(new Map([['a', Buffer.from('⌀ 3')]])));
  });
});
