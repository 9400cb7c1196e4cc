import { statSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { unpackTar } from '../../src/host/untar.ts';
import { emptyFolder, readFiles } from './folders.ts';

/** One entry with a ustar header; field places from POSIX.1-1988, table "ustar Header Block". */
function entry(name: string, content: string, mode = '0000644', type = '0'): Buffer {
  const header = Buffer.alloc(512);
  header.write(name, 0);
  header.write(`${mode}\0`, 100);
  header.write(`${content.length.toString(8).padStart(11, '0')}\0`, 124);
  header.write(type, 156);
  header.write('ustar\0', 257);
  const body = Buffer.alloc(Math.ceil(content.length / 512) * 512);
  body.write(content);
  return Buffer.concat([header, body]);
}

describe('unpackTar', () => {
  it('unpacks files of any length, and whether they can be run', () => {
    const folder = join(emptyFolder(), 'new');
    const files = { 'lib/a.so': 'x'.repeat(512), 'lib/b.so': 'y'.repeat(513), empty: '' };
    const entries = Object.entries(files).map(([name, content]) =>
      entry(name, content, name === 'lib/a.so' ? '0000755' : '0000644'),
    );
    unpackTar(
      Buffer.concat([
        entry('lib/', '', '0000755', '5'),
        ...entries,
        entry('link', '', '0000777', '2'),
        Buffer.alloc(1024),
      ]),
      folder,
    );
    expect(readFiles(folder)).toEqual(files);
    expect(statSync(join(folder, 'lib/a.so')).mode & 0o777).toBe(0o700);
    expect(statSync(join(folder, 'lib/b.so')).mode & 0o777).toBe(0o600);
  });

  it('throws on a name that leaves the folder', () => {
    expect(() => unpackTar(entry('../x', 'x'), join(emptyFolder(), 'new'))).toThrow('outside its folder');
  });
});
