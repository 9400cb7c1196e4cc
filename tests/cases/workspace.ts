/** The sample workspace as files in memory, whole or with edits. */
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';

/** A change to one file of the sample: a text found exactly once and replaced, or the whole of a new file. */
export type Edit =
  | { readonly file: string; readonly find: string; readonly replace: string }
  | { readonly file: string; readonly text: string };

export type WorkspaceFiles = Readonly<Record<string, string | Uint8Array>>;

const folder = join(import.meta.dirname, 'sample');

export function sample(): Record<string, string> {
  const files = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  return Object.fromEntries(
    files.map((entry) => {
      const path = join(entry.parentPath, entry.name);
      return [path.slice(folder.length + 1).replaceAll('\\', '/'), readFileSync(path, 'utf8')];
    }),
  );
}

/** The sample with edits made; throws where a text to be found is not there exactly once, or a new file is there already. */
export const edited = (edits: readonly Edit[]): Record<string, string> => editedFrom(sample(), edits);

/** The same of any other workspace. */
export function editedFrom(whole: Readonly<Record<string, string>>, edits: readonly Edit[]): Record<string, string> {
  const files = { ...whole };
  for (const edit of edits) {
    const before = files[edit.file];
    if ('text' in edit) {
      if (before !== undefined) throw new Error(`${edit.file} is there already`);
      files[edit.file] = edit.text;
      continue;
    }
    const parts = before?.split(edit.find) ?? [];
    if (parts.length !== 2) throw new Error(`${edit.file}: found ${parts.length - 1} times: ${edit.find}`);
    files[edit.file] = parts.join(edit.replace);
  }
  return files;
}

/** The sample without one of its files. */
export function without(path: string): Record<string, string> {
  const { [path]: gone, ...rest } = sample();
  if (gone === undefined) throw new Error(`the sample has no ${path}`);
  return rest;
}
