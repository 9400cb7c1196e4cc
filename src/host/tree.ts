/** A tree of files as one value: its fingerprint, and the same read back from and written to a folder. */
import { createHash } from 'node:crypto';
import { closeSync, fsyncSync, mkdirSync, openSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { byCodeUnit, errorCode, insidePath } from './paths.ts';

/** Contents by path: '/'-separated, relative, no '..'. Text is written as UTF-8. */
export type Tree = ReadonlyMap<string, string | Uint8Array>;

/** First 16 hexadecimal digits of SHA-256 over the sorted names and contents, each preceded by its length so that no two trees run together. */
export function fingerprint(names: readonly string[], contentOf: (name: string) => string | Uint8Array): string {
  const hash = createHash('sha256');
  for (const name of names.toSorted(byCodeUnit)) {
    for (const piece of [name, contentOf(name)]) {
      const bytes = typeof piece === 'string' ? Buffer.from(piece, 'utf8') : piece;
      hash.update(`${bytes.length}:`).update(bytes);
    }
  }
  return hash.digest('hex').slice(0, 16);
}

export function treeFingerprint(tree: Tree): string {
  return fingerprint([...tree.keys()], (name) => tree.get(name) ?? '');
}

/** Fingerprint of what lies in a folder; undefined when it isn't a readable folder of plain files. */
export function folderFingerprint(folder: string): string | undefined {
  try {
    return fingerprint(plainFiles(folder, ''), (name) => readFileSync(join(folder, name)));
  } catch {
    return undefined;
  }
}

function plainFiles(folder: string, below: string): string[] {
  return readdirSync(join(folder, below), { withFileTypes: true }).flatMap((entry) => {
    const path = below === '' ? entry.name : `${below}/${entry.name}`;
    return entry.isDirectory() ? plainFiles(folder, path) : [path];
  });
}

/**
 * Writes a tree into a new folder and forces it to the disk: all files first, then one flush each, so that the system
 * can gather the writes. A path that leaves the folder is a bug of the caller and throws.
 */
export function writeTree(folder: string, tree: Tree): void {
  const folders = new Set([folder]);
  mkdirSync(folder);
  for (const [path, content] of tree) {
    if (insidePath(path) !== path || path === '') throw new Error(`not a path of a published file: ${path}`);
    const file = join(folder, path);
    for (let parent = dirname(file); !folders.has(parent); parent = dirname(parent)) folders.add(parent);
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, content, { flag: 'wx' });
  }
  for (const path of tree.keys()) flush(join(folder, path));
  for (const each of folders) flushFolder(each);
}

function flush(path: string): void {
  const file = openSync(path, 'r+');
  try {
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
}

/** Forces a folder's entries to the disk, where the system lets a folder be opened (Windows and some shares don't). */
export function flushFolder(path: string): void {
  try {
    const folder = openSync(path, 'r');
    try {
      fsyncSync(folder);
    } finally {
      closeSync(folder);
    }
  } catch (error) {
    if (!['EISDIR', 'EPERM', 'EACCES', 'EINVAL', 'ENOTSUP', 'EBADF'].includes(errorCode(error))) throw error;
  }
}
