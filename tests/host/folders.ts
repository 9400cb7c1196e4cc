/** Temporary folders for tests, gone after each test. */
import { mkdirSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { onTestFinished } from 'vitest';

/** A new empty folder, removed when the test ends. */
export function emptyFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'platen-test-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

export function writeFiles(folder: string, files: Readonly<Record<string, string>>): void {
  for (const [path, text] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text);
  }
}

/** Text of every file below a folder, links followed. */
export function readFiles(folder: string): Record<string, string> {
  const paths = readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .toSorted();
  return Object.fromEntries(paths.map((path) => [path.slice(folder.length + 1), readFileSync(path, 'utf8')]));
}

export function tree(files: Readonly<Record<string, string>>): ReadonlyMap<string, string> {
  return new Map(Object.entries(files));
}
