/** A new file, whole or not at all: written beside its place, then linked to it, which fails where one is there. */
import { randomBytes } from 'node:crypto';
import { linkSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { errorCode, errorLine, insidePath } from './paths.ts';

export function createFile(
  root: string,
  path: string,
  text: string,
): { readonly created: true } | { readonly failed: string } {
  const inside = insidePath(path);
  if (inside === undefined) return { failed: `${path} lies outside the workspace.` };
  const file = join(root, inside);
  const beside = `${file}.${randomBytes(4).toString('hex')}.new`;
  try {
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(beside, text, { flush: true });
    linkSync(beside, file);
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
