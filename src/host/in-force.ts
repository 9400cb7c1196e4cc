/** What stands at `<out>/cards`: nothing, a link or folder that publishing put there, or something of somebody else's. */
import { lstatSync, readFileSync, readlinkSync } from 'node:fs';
import { join } from 'node:path';
import { errorCode } from './paths.ts';
import { folderFingerprint } from './tree.ts';

export type InForce =
  | { readonly kind: 'none' }
  | { readonly kind: 'link'; readonly build: string }
  | { readonly kind: 'folder' }
  | { readonly kind: 'foreign'; readonly why: string };

/** A build's folder name: fingerprint and tag. */
export const buildName = /^[0-9a-f]{16}-[0-9a-f]{8}$/;

/** Name of the build a link points at, or undefined when the link isn't one of ours. */
export function linkedBuild(link: string): string | undefined {
  const target = readlinkSync(link).replaceAll('\\', '/');
  const name = target.startsWith('.builds/') ? target.slice('.builds/'.length) : '';
  return buildName.test(name) ? name : undefined;
}

export function inForce(out: string): InForce {
  const path = join(out, 'cards');
  const stats = lstatSync(path, { throwIfNoEntry: false });
  if (stats === undefined) return { kind: 'none' };
  if (stats.isSymbolicLink()) {
    const build = linkedBuild(path);
    return build === undefined
      ? { kind: 'foreign', why: 'it is a link made by somebody else' }
      : { kind: 'link', build };
  }
  if (!stats.isDirectory()) return { kind: 'foreign', why: 'it is a file' };
  const id = folderFingerprint(path);
  // A real folder is ours only when it holds exactly what was published: a stray file in it is somebody's work.
  if (id !== undefined && swappedIds(out).has(id)) return { kind: 'folder' };
  return { kind: 'foreign', why: 'it is a folder with files that were not published here' };
}

/** Fingerprints of the trees that were ever put in place as a real folder. */
function swappedIds(out: string): ReadonlySet<string> {
  try {
    return new Set(readFileSync(swappedFile(out), 'utf8').split('\n').filter(Boolean));
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return new Set();
    throw error;
  }
}

export function swappedFile(out: string): string {
  return join(out, '.builds', 'swapped');
}
