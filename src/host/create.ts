/** One file of the workspace, whole or not at all: written beside its place, then put there in one step. */
import { randomBytes } from 'node:crypto';
import { linkSync, mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { flushFolder } from './tree.ts';
import { errorCode, errorLine, insidePath } from './paths.ts';

type Put = { readonly created: true } | { readonly failed: string };

/** A new file: never over one that is there. */
export const createFile = (root: string, path: string, text: string | Uint8Array): Put =>
  put(root, path, text, (beside, file) => linkSync(beside, file));

/** In place of the file that is there, if one is. */
export const replaceFile = (root: string, path: string, text: string | Uint8Array): Put =>
  put(root, path, text, (beside, file) => renameSync(beside, file));

function put(
  root: string,
  path: string,
  text: string | Uint8Array,
  place: (beside: string, file: string) => void,
): Put {
  const inside = insidePath(path);
  if (inside === undefined) return { failed: `${path} lies outside the workspace.` };
  const file = join(root, inside);
  const beside = `${file}.${randomBytes(4).toString('hex')}.new`;
  try {
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(beside, text, { flush: true });
    place(beside, file);
    flushFolder(dirname(file));
    return { created: true };
  } catch (error) {
    if (errorCode(error) === '') throw error;
    return {
      failed:
        errorCode(error) === 'EEXIST' ? `${path} is there already.` : `${path} cannot be written: ${errorLine(error)}.`,
    };
  } finally {
    rmSync(beside, { force: true });
  }
}
