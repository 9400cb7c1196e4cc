/** Paths inside the workspace: '/'-separated, relative, never leaving the root. */
import { basename, dirname } from 'node:path';

/** The path in its plain form ('.' and '//' taken out), or undefined when it is absolute, climbs out or isn't a path here. */
export function insidePath(path: string): string | undefined {
  if (path.startsWith('/') || /^[A-Za-z]:/.test(path) || /[\\\0]/.test(path)) return undefined;
  const parts = path.split('/').filter((part) => part !== '' && part !== '.');
  return parts.includes('..') ? undefined : parts.join('/');
}

/** The folder of a file a user names, and its name there: `.` where no folder is named. */
export function folderAndName(path: string): { readonly folder: string; readonly name: string } {
  return { folder: dirname(path), name: basename(path) };
}

/** Order by UTF-16 code units: the same on every machine, whatever its locale. */
export function byCodeUnit(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/** The system's code of an error ('ENOENT'), or '' when it has none. */
export function errorCode(error: unknown): string {
  return error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : '';
}

/** An error as one line for a person. */
export function errorLine(error: unknown): string {
  const text = error instanceof Error ? error.message : String(error);
  return text.replace(/\s+/g, ' ').trim();
}
