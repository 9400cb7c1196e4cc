/** Unpacks the plain files of a tar archive (POSIX.1-1988 "ustar" headers: 512-byte blocks, sizes in octal). */
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { insidePath } from './paths.ts';

const blockBytes = 512;

/** Files keep only whether they can be run; links and devices are left out. A path that leaves the folder throws. */
export function unpackTar(archive: Uint8Array, folder: string): void {
  for (let at = 0; at + blockBytes <= archive.length && archive[at] !== 0;) {
    const header = archive.subarray(at, at + blockBytes);
    const sizeBytes = octal(header, 124, 12);
    const start = at + blockBytes;
    if (isPlainFile(header)) {
      const content = archive.subarray(start, start + sizeBytes);
      put(folder, text(header, 0, 100), content, (octal(header, 100, 8) & 0o100) !== 0);
    }
    at = start + Math.ceil(sizeBytes / blockBytes) * blockBytes;
  }
}

function put(folder: string, name: string, content: Uint8Array, runnable: boolean): void {
  const inside = insidePath(name);
  if (inside === undefined) throw new Error(`an archive names a path outside its folder: ${name}`);
  const file = join(folder, inside);
  mkdirSync(dirname(file), { recursive: true, mode: 0o700 });
  writeFileSync(file, content, { mode: runnable ? 0o700 : 0o600 });
}

function isPlainFile(header: Uint8Array): boolean {
  const type = header[156];
  return type === 0 || type === 0x30;
}

function text(header: Uint8Array, at: number, lengthBytes: number): string {
  return new TextDecoder().decode(header.subarray(at, at + lengthBytes)).replace(/\0.*$/s, '');
}

function octal(header: Uint8Array, at: number, lengthBytes: number): number {
  return Number.parseInt(text(header, at, lengthBytes).trim(), 8);
}
