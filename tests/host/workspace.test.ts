import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Host } from '../../src/host/host.ts';
import { memoryHost } from '../../src/host/memory.ts';
import { workspaceHost } from '../../src/host/workspace.ts';
import { emptyFolder, readFiles, tree, writeFiles } from './folders.ts';

const files = {
  'models/tarn.yaml': 'a: 1',
  'models/plant/saws.yaml': 'b: ⌀',
  'models/Z.yaml': '',
  'models-old/x.yaml': '',
  'top.txt': '',
};

function realHost(): Host {
  const root = emptyFolder();
  writeFiles(root, files);
  return workspaceHost(root);
}

const text = (bytes: Uint8Array | undefined): string | undefined =>
  bytes === undefined ? undefined : new TextDecoder().decode(bytes);

/** The Swedish locale writes dates as YYYY-MM-DD. */
const swedishDate = (): string => new Date().toLocaleDateString('sv-SE');

describe.each([
  ['workspaceHost', realHost],
  ['memoryHost', (): Host => memoryHost(files)],
])('%s', (_, make) => {
  it('lists all files below a folder in code-unit order', () => {
    const host = make();
    expect(host.list('models')).toEqual(['models/Z.yaml', 'models/plant/saws.yaml', 'models/tarn.yaml']);
    expect(host.list('./models/plant/')).toEqual(['models/plant/saws.yaml']);
    expect(host.list('')).toHaveLength(5);
  });

  it('lists nothing in a folder that is not there or is a file', () => {
    const host = make();
    expect([host.list('mod'), host.list('nowhere/at/all'), host.list('top.txt')]).toEqual([[], [], []]);
  });

  it('says whether a file lies below a folder', () => {
    const host = make();
    const below = (path: string) => host.isBelow('models', path);
    expect(['models/tarn.yaml', './models/plant/saws.yaml'].map(below)).toEqual([true, true]);
    expect(['models', 'models-old/x.yaml', 'models/none', '../models/tarn.yaml'].map(below)).toEqual(
      Array.from({ length: 4 }, () => false),
    );
    expect(host.isBelow('', 'top.txt')).toBe(true);
  });

  it('reads bytes, and undefined where there is no file', () => {
    const host = make();
    expect(text(host.read('models/plant/saws.yaml'))).toBe('b: ⌀');
    expect([host.read('models'), host.read('none.yaml'), host.read('top.txt/x')]).toEqual([
      undefined,
      undefined,
      undefined,
    ]);
  });

  it.each(['../x', 'models/../../x', '/etc/hostname', '..', 'C:/x', 'a\\..\\x', 'a\0b'])(
    'does not leave the root by %j',
    (path) => {
      const host = make();
      expect(host.read(path)).toBeUndefined();
      expect(host.list(path)).toEqual([]);
    },
  );

  it('does not publish into a folder outside', () => {
    expect(make().publish('../out', tree({ a: 'x' }))).toEqual({
      failed: expect.stringContaining('outside the workspace'),
    });
  });

  it('has the files that come with the program', () => {
    const host = make();
    expect(text(host.shipped('package.json'))).toContain('"platen"');
    const font = host.shipped(
      'npm:@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-400-normal.woff2',
    );
    expect(text(font?.subarray(0, 4))).toBe('wOF2');
    expect([host.shipped('templates/none.hbs'), host.shipped('npm:no-such-package/x'), host.shipped('../x')]).toEqual([
      undefined,
      undefined,
      undefined,
    ]);
  });

  it('says the date as YYYY-MM-DD', () => {
    expect(make().today()).toMatch(/^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/);
  });
});

describe('workspaceHost on a disk', () => {
  it('follows a link to a file inside, and none that points outside or to a folder', () => {
    const outside = emptyFolder();
    const root = emptyFolder();
    writeFiles(outside, { 'secret.yaml': 's' });
    writeFiles(root, { 'models/a.yaml': 'a' });
    const links = {
      'in.yaml': 'a.yaml',
      'out.yaml': join(outside, 'secret.yaml'),
      'folder-out': outside,
      round: '.',
      gone: 'none',
    };
    for (const [name, target] of Object.entries(links)) symlinkSync(target, join(root, 'models', name));
    const host = workspaceHost(root);
    expect(host.list('models')).toEqual(['models/a.yaml', 'models/in.yaml']);
    expect(text(host.read('models/in.yaml'))).toBe('a');
    expect([host.read('models/out.yaml'), host.read('models/folder-out/secret.yaml')]).toEqual([undefined, undefined]);
    expect(host.list('models/folder-out')).toEqual([]);
  });

  it('says whether a file lies below a folder, with its links followed', () => {
    const root = emptyFolder();
    writeFiles(root, { 'models/a.yaml': 'a', 'models-old/b.yaml': 'b', 'top.txt': 't' });
    symlinkSync('a.yaml', join(root, 'models', 'in.yaml'));
    symlinkSync(join('..', 'top.txt'), join(root, 'models', 'up.yaml'));
    symlinkSync(join('..', 'models-old'), join(root, 'models', 'old'));
    const host = workspaceHost(root);
    const below = (path: string) => host.isBelow('models', path);
    expect(['models/a.yaml', 'models/in.yaml'].map(below)).toEqual([true, true]);
    for (const path of ['models/up.yaml', 'models/old/b.yaml', 'models-old/b.yaml', 'top.txt', 'models', 'models/none'])
      expect(below(path), path).toBe(false);
    expect(text(host.read('models/up.yaml'))).toBe('t');
  });

  it('does not take a neighbour whose name begins alike for the root', () => {
    const parent = emptyFolder();
    writeFiles(parent, { 'root-2/x': 'x', 'root/y': 'y' });
    symlinkSync(join(parent, 'root-2', 'x'), join(parent, 'root', 'link'));
    expect(workspaceHost(join(parent, 'root')).list('')).toEqual(['y']);
  });

  it('works where the root itself is reached through a link', () => {
    const parent = emptyFolder();
    mkdirSync(join(parent, 'root'));
    writeFileSync(join(parent, 'root', 'y'), 'y');
    symlinkSync('root', join(parent, 'link'));
    expect(workspaceHost(join(parent, 'link')).list('')).toEqual(['y']);
  });

  it('lists nothing where there is no root', () => {
    const host = workspaceHost(join(emptyFolder(), 'none'));
    expect([host.list(''), host.read('a')]).toEqual([[], undefined]);
  });

  it("gives today's local date", () => {
    // Asked before and after, for midnight.
    const before = swedishDate();
    const said = workspaceHost('.').today();
    expect([before, swedishDate()]).toContain(said);
  });

  it('publishes below the root, or into a folder named in full', () => {
    const root = emptyFolder();
    const elsewhere = emptyFolder();
    const host = workspaceHost(root);
    host.publish('out', tree({ a: 'x' }));
    host.publish(elsewhere, tree({ a: 'y' }));
    expect(readFiles(join(root, 'out', 'cards'))).toEqual({ a: 'x' });
    expect(readFiles(join(elsewhere, 'cards'))).toEqual({ a: 'y' });
  });
});

describe('memoryHost', () => {
  it('records what was asked and published', () => {
    const host = memoryHost(files, { today: '2026-02-03' });
    host.read('top.txt');
    host.read('none');
    host.list('models');
    host.publish('out', tree({ a: 'ä' }));
    expect([host.reads, host.lists, host.today()]).toEqual([['top.txt', 'none'], ['models'], '2026-02-03']);
    expect(host.published.get('out')).toEqual(new Map([['a', new TextEncoder().encode('ä')]]));
  });

  it('says that nothing changed when the same tree is published again', () => {
    const host = memoryHost({});
    expect([host.publish('out', tree({ a: 'x' })), host.publish('out', tree({ a: 'x' }))]).toEqual([
      { path: 'out/cards', changed: true },
      { path: 'out/cards', changed: false },
    ]);
  });

  it('has no printer unless given one', async () => {
    expect(await memoryHost({}).openPrinter()).toHaveProperty('missing');
  });
});
