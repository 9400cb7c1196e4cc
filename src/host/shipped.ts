/** Files that come with the program itself: its templates, and fonts out of the packages it needs. */
import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { byCodeUnit, errorCode, insidePath } from './paths.ts';

// The same two steps up from src/host and from the compiled folder.
const programFolder = join(dirname(fileURLToPath(import.meta.url)), '..', '..');

/** Where a file of a package lies, or undefined when the package isn't installed or doesn't give that file out. */
export function packageFile(name: string): string | undefined {
  try {
    return createRequire(import.meta.url).resolve(name);
  } catch (error) {
    const code = errorCode(error);
    if (code === 'MODULE_NOT_FOUND' || code === 'ERR_PACKAGE_PATH_NOT_EXPORTED') return undefined;
    throw error;
  }
}

/** Bytes of 'templates/…' (the program's own) or 'npm:@scope/name/file' (a package's); undefined when there is no such file. */
export function shipped(path: string): Uint8Array | undefined {
  const file = path.startsWith('npm:') ? packageFile(path.slice('npm:'.length)) : ownFile(path);
  return file !== undefined && existsSync(file) ? readFileSync(file) : undefined;
}

/** Files of the program below one of its folders; [] where it has no such folder. */
export function shippedList(dir: string): string[] {
  const folder = ownFile(dir);
  if (folder === undefined || !existsSync(folder)) return [];
  return readdirSync(folder, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(programFolder, join(entry.parentPath, entry.name)).split(sep).join('/'))
    .toSorted(byCodeUnit);
}

function ownFile(path: string): string | undefined {
  const inside = insidePath(path);
  return inside === undefined ? undefined : join(programFolder, inside);
}
