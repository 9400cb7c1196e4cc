import { lstatSync, mkdirSync, readdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { publish, type Published } from '../../src/host/publish.ts';
import { emptyFolder, readFiles, tree, writeFiles } from './folders.ts';

const first = { 'index.html': 'one', 'a/b.html': 'x' };
const second = { 'index.html': 'two' };
const deadPid = 4_194_305;

/** A system that makes no links. */
function publishWithoutLinks(out: string, files: Readonly<Record<string, string>>): Published {
  return publish(out, tree(files), () => {
    throw Object.assign(new Error('operation not permitted'), { code: 'EPERM' });
  });
}

describe('publish where no links can be made', () => {
  it('swaps a real folder and leaves nothing behind', () => {
    const out = emptyFolder();
    for (const files of [first, second, first]) {
      expect(publishWithoutLinks(out, files)).toEqual({ path: join(out, 'cards'), changed: true });
      expect(lstatSync(join(out, 'cards')).isDirectory()).toBe(true);
      expect(readFiles(join(out, 'cards'))).toEqual(files);
      expect(readdirSync(join(out, '.builds'))).toEqual(['swapped']);
    }
    expect(publishWithoutLinks(out, first)).toMatchObject({ changed: false });
  });

  it('refuses a folder in which somebody has put a file', () => {
    const out = emptyFolder();
    publishWithoutLinks(out, first);
    writeFileSync(join(out, 'cards', 'my-notes.txt'), 'keep');
    expect(publishWithoutLinks(out, second)).toEqual({ failed: expect.stringContaining('not published here') });
    expect(readFiles(join(out, 'cards'))).toEqual({ ...first, 'my-notes.txt': 'keep' });
  });

  it('puts the old folder back after a crash between the two renames', () => {
    const out = emptyFolder();
    publishWithoutLinks(out, first);
    renameSync(join(out, 'cards'), join(out, '.builds', `.before-${deadPid}-00000000`));
    expect(publishWithoutLinks(out, first)).toMatchObject({ changed: false });
    expect(readFiles(join(out, 'cards'))).toEqual(first);
  });

  it('removes the old folder after a crash just behind the two renames', () => {
    const out = emptyFolder();
    publishWithoutLinks(out, first);
    writeFiles(join(out, '.builds', `.before-${deadPid}-00000000`), second);
    publishWithoutLinks(out, first);
    expect(readdirSync(join(out, '.builds'))).toEqual(['swapped']);
  });

  it('leaves the folder a live process has set aside', () => {
    const out = emptyFolder();
    const aside = `.before-${process.ppid}-00000000`;
    writeFiles(join(out, '.builds', aside), second);
    publishWithoutLinks(out, first);
    expect(readdirSync(join(out, '.builds'))).toEqual([aside, 'swapped']);
  });

  it('takes over from links, and links leave a swapped folder a folder', () => {
    const out = emptyFolder();
    publish(out, tree(first));
    publishWithoutLinks(out, second);
    expect(readFiles(join(out, 'cards'))).toEqual(second);
    expect(readdirSync(join(out, '.builds'))).toEqual(['swapped']);
    publish(out, tree(first));
    expect(lstatSync(join(out, 'cards')).isDirectory()).toBe(true);
    expect(readFiles(join(out, 'cards'))).toEqual(first);
  });

  it('moves a folder aside that another publisher put there meanwhile', () => {
    const out = emptyFolder();
    const result = publish(out, tree(first), () => {
      // Between looking and swapping, another process's tree came into force.
      mkdirSync(join(out, 'cards'));
      writeFileSync(join(out, 'cards', 'other'), '');
      throw Object.assign(new Error('no links'), { code: 'ENOSYS' });
    });
    expect(result).toMatchObject({ changed: true });
    expect(readFiles(join(out, 'cards'))).toEqual(first);
  });

  it('passes on a failure that has nothing to do with links', () => {
    const out = emptyFolder();
    const full = publish(out, tree(first), () => {
      throw Object.assign(new Error('no space left on device'), { code: 'ENOSPC' });
    });
    expect(full).toEqual({ failed: `${join(out, 'cards')} was left as it was: the disk is full.` });
    expect(readdirSync(join(out, '.builds'))).toEqual([]);
  });

  it('starts on a dangling link', () => {
    const out = emptyFolder();
    publish(out, tree(first));
    rmSync(join(out, '.builds'), { recursive: true });
    expect(publishWithoutLinks(out, second)).toMatchObject({ changed: true });
    expect(readFiles(join(out, 'cards'))).toEqual(second);
  });
});
