/** The real outside: a workspace folder on this machine. */
import { readFileSync, readdirSync, realpathSync, statSync } from 'node:fs';
import { isAbsolute, join, resolve, sep } from 'node:path';
import { openBrowser } from './browser.ts';
import type { Environment } from './browser-candidates.ts';
import type { Host } from './host.ts';
import { byCodeUnit, errorCode, insidePath } from './paths.ts';
import { openPrinter } from './printer.ts';
import { createFile, replaceFile } from './create.ts';
import { publish } from './publish.ts';
import { shipped, shippedList } from './shipped.ts';

const absent = new Set(['ENOENT', 'ENOTDIR', 'EISDIR', 'ELOOP', 'ENAMETOOLONG']);

/** The answer, or undefined where the file isn't there; a disk or permission failure still throws. */
function ifThere<T>(get: () => T): T | undefined {
  try {
    return get();
  } catch (error) {
    if (absent.has(errorCode(error))) return undefined;
    throw error;
  }
}

/** The file behind a workspace path with links followed, or undefined when it isn't there or lies outside the root. */
function locate(root: string, path: string): string | undefined {
  const inside = insidePath(path);
  if (inside === undefined) return undefined;
  const realRoot = ifThere(() => realpathSync(root));
  const real = ifThere(() => realpathSync(join(root, inside)));
  if (realRoot === undefined || real === undefined) return undefined;
  const prefix = realRoot.endsWith(sep) ? realRoot : realRoot + sep;
  return real === realRoot || real.startsWith(prefix) ? real : undefined;
}

/** Files below a folder. A link to a file counts where it stays inside; a link to a folder isn't followed (it could turn in a circle). */
function filesBelow(root: string, dir: string): string[] {
  const folder = locate(root, dir);
  const entries = folder === undefined ? [] : (ifThere(() => readdirSync(folder, { withFileTypes: true })) ?? []);
  return entries.flatMap((entry) => {
    const path = dir === '' ? entry.name : `${dir}/${entry.name}`;
    if (entry.isDirectory()) return filesBelow(root, path);
    if (entry.isFile()) return [path];
    const target = entry.isSymbolicLink() ? locate(root, path) : undefined;
    return target !== undefined && statSync(target).isFile() ? [path] : [];
  });
}

/** Local date as YYYY-MM-DD. */
function localDate(now: Date): string {
  return [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((part) => String(part).padStart(2, '0')).join('-');
}

/** A workspace folder. `environment` names the browser (PLATEN_BROWSER), the search path and the cache folder. */
export function workspaceHost(root: string, environment: Environment = process.env): Host {
  const base = resolve(root);
  return {
    list(dir) {
      const inside = insidePath(dir);
      return inside === undefined ? [] : filesBelow(base, inside).toSorted(byCodeUnit);
    },
    read(path) {
      const file = locate(base, path);
      return file === undefined ? undefined : ifThere(() => readFileSync(file));
    },
    isBelow(dir, path) {
      const [folder, file] = [locate(base, dir), locate(base, path)];
      return folder !== undefined && file !== undefined && file.startsWith(folder + sep);
    },
    shipped,
    shippedList,
    today: () => localDate(new Date()),
    create: (path, text) => createFile(base, path, text),
    replace: (path, text) => replaceFile(base, path, text),
    publish(dir, tree) {
      if (isAbsolute(dir)) return publish(dir, tree);
      const inside = insidePath(dir);
      if (inside === undefined) return { failed: `The folder ${dir} lies outside the workspace ${base}.` };
      return publish(join(base, inside), tree);
    },
    openPrinter: () => openPrinter(() => openBrowser(environment)),
  };
}
