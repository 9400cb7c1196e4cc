/**
 * Publishing: a whole tree of files takes the place of the one before, so that a reader, a crash or a power cut sees
 * either all of the old or all of the new.
 *
 *     out/
 *       cards -> .builds/<id>-<tag>     the tree in force: a relative link, replaced in one step
 *       .builds/<id>-<tag>/             id: fingerprint of the tree; tag: random, so that no name ever comes back
 *       .builds/.next-<pid>-<tag>       being written by that process
 *       .builds/.next-<pid>-<tag>.link  its link to be, which also claims its build until it is in force
 *
 * Anything else in the folder is left alone. Two publishers at once don't disturb each other; the last one is in force.
 * Where links can't be made (some Windows set-ups and file shares) `cards` is a real folder: see publish-swap.ts.
 */
import { randomBytes } from 'node:crypto';
import { mkdirSync, renameSync, rmSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { inForce } from './in-force.ts';
import { errorCode, errorLine } from './paths.ts';
import { prune } from './prune.ts';
import { recoverSwap, swapFolder } from './publish-swap.ts';
import { flushFolder, folderFingerprint, treeFingerprint, writeTree, type Tree } from './tree.ts';

export type { Tree } from './tree.ts';

/** Where the tree can be read and whether anything was written, or why the old one stayed in force (one sentence). */
export type Published = { readonly path: string; readonly changed: boolean } | { readonly failed: string };

/** Makes a link to a folder: (target, path); a parameter so that tests can play a system without links. */
export type MakeLink = (target: string, path: string) => void;

// Windows doesn't rename a link over a link, and gives links to few users: there the folder is swapped.
const makeLink: MakeLink | undefined =
  process.platform === 'win32' ? undefined : (target, path) => symlinkSync(target, path, 'dir');

/** Publishes `tree` as `<out>/cards`. A full disk or a folder that can't be written is an answer, not a throw. */
export function publish(out: string, tree: Tree, link: MakeLink | undefined = makeLink): Published {
  try {
    mkdirSync(join(out, '.builds'), { recursive: true });
    recoverSwap(out);
    return publishInto(out, tree, link);
  } catch (error) {
    if (errorCode(error) === '') throw error;
    return { failed: `${join(out, 'cards')} was left as it was: ${reason(error)}.` };
  }
}

function publishInto(out: string, tree: Tree, link: MakeLink | undefined): Published {
  const path = join(out, 'cards');
  const id = treeFingerprint(tree);
  const old = inForce(out);
  if (old.kind === 'foreign')
    return { failed: `${path} was left as it was: ${old.why}. Move it away or choose another folder.` };
  // The name alone doesn't prove it: somebody may have edited a card in place.
  const changed = folderFingerprint(path) !== id;
  if (changed) putInForce(out, id, tree, old.kind === 'folder' ? undefined : link);
  prune(out);
  return { path, changed };
}

function putInForce(out: string, id: string, tree: Tree, link: MakeLink | undefined): void {
  const tag = randomBytes(4).toString('hex');
  const next = join(out, '.builds', `.next-${process.pid}-${tag}`);
  try {
    writeTree(next, tree);
    const linked = link !== undefined && switchLink(out, `${id}-${tag}`, next, link);
    if (!linked) swapFolder(out, id, next);
  } finally {
    rmSync(next, { recursive: true, force: true });
    rmSync(`${next}.link`, { force: true });
  }
}

/** False where this system makes no links. The pending link comes first: it keeps other publishers from pruning the build. */
function switchLink(out: string, build: string, next: string, link: MakeLink): boolean {
  const pending = `${next}.link`;
  try {
    link(`.builds/${build}`, pending);
  } catch (error) {
    if (['EPERM', 'EACCES', 'ENOSYS', 'ENOTSUP', 'EOPNOTSUPP', 'EINVAL'].includes(errorCode(error))) return false;
    throw error;
  }
  renameSync(next, join(out, '.builds', build));
  flushFolder(join(out, '.builds'));
  renameSync(pending, join(out, 'cards'));
  flushFolder(out);
  return true;
}

function reason(error: unknown): string {
  switch (errorCode(error)) {
    case 'ENOSPC':
    case 'EDQUOT':
      return 'the disk is full';
    case 'EACCES':
    case 'EPERM':
    case 'EROFS':
      return 'the folder may not be written to';
    case 'ENOTDIR':
    case 'EEXIST':
      return `a file stands where a folder is needed, or two names differ only in case (${errorLine(error)})`;
    default:
      return errorLine(error);
  }
}
