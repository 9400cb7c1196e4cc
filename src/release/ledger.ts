/**
 * The ledger: an entry a file, numbered, each with the fingerprint of the file before it; `head.json` says how many there are
 * and the fingerprint of the last. So an entry that was edited, taken out, moved or doubled is seen, and so is a release whose
 * file is not what was released.
 *
 *     models/released/ledger/000001.json     { number, before, ...entry }
 *     models/released/head.json              { count, last }
 *
 * An entry is in force when its file is there: that is one step. The head follows; where a crash kept it from doing so it
 * is one behind, never ahead.
 */
import { createHash } from 'node:crypto';
import type { Entry } from './entries.ts';

export const FOLDER = 'models/released';
export const HEAD = `${FOLDER}/head.json`;
const NONE = '';

/** What the ledger needs of the outside. */
export interface LedgerFiles {
  list(dir: string): readonly string[];
  read(path: string): Uint8Array | undefined;
}

export type Ledger =
  | {
      readonly sound: true;
      readonly entries: readonly Entry[];
      /** Fingerprint of the last entry's file. */
      readonly last: string;
      /** Whether the head says so too. */
      readonly headIsBehind: boolean;
    }
  /** What was found, in a sentence, and in which file. */
  | { readonly sound: false; readonly file: string; readonly what: string };

export const sha256 = (bytes: Uint8Array | string): string => createHash('sha256').update(bytes).digest('hex');

export const entryPath = (number: number): string => `${FOLDER}/ledger/${String(number).padStart(6, '0')}.json`;

/** The text of an entry's file. */
export const entryText = (number: number, before: string, entry: Entry): string =>
  `${JSON.stringify({ number, before, ...entry }, undefined, 2)}\n`;

export const headText = (count: number, last: string): string => `${JSON.stringify({ count, last })}\n`;

export function readLedger(files: LedgerFiles): Ledger {
  const altered = (file: string, what: string): Ledger => ({ sound: false, file, what });
  const paths = files.list(`${FOLDER}/ledger`);
  const entries: Entry[] = [];
  let last = NONE;
  for (const [i, path] of paths.entries()) {
    const number = i + 1;
    if (path !== entryPath(number))
      return altered(path, `${entryPath(number)} is missing: entries are numbered without a gap`);
    const bytes = files.read(path);
    const stored = bytes && parsed(bytes);
    if (!stored || !bytes) return altered(path, 'it cannot be read as an entry');
    if (stored['number'] !== number) return altered(path, `it says it is entry ${String(stored['number'])}`);
    if (stored['before'] !== last) return altered(path, 'the entry before it is not the one it was written after');
    const { number: _number, before: _before, ...entry } = stored;
    entries.push(entry as unknown as Entry);
    last = sha256(bytes);
  }
  return withHead(files, entries, last) ?? withRecords(files, entries) ?? sound(files, entries, last);
}

const sound = (files: LedgerFiles, entries: readonly Entry[], last: string): Ledger => ({
  sound: true,
  entries,
  last,
  headIsBehind: headOf(files)?.count !== entries.length,
});

function headOf(files: LedgerFiles): { readonly count: number; readonly last: string } | undefined {
  const bytes = files.read(HEAD);
  const head = bytes && parsed(bytes);
  if (!head) return bytes ? { count: Number.NaN, last: '' } : { count: 0, last: NONE };
  return { count: Number(head['count']), last: String(head['last']) };
}

/** The head counts the entries; it may be one behind, where a crash came between. */
function withHead(files: LedgerFiles, entries: readonly Entry[], last: string): Ledger | undefined {
  const head = headOf(files)!;
  if (head.count === entries.length && head.last === last) return undefined;
  const before = entries.length > 0 ? files.read(entryPath(entries.length)) : undefined;
  const behind = before && parsed(before)?.['before'];
  if (head.count === entries.length - 1 && head.last === behind) return undefined;
  const what =
    head.count > entries.length
      ? `it counts ${head.count} entries and there are ${entries.length}: the last were taken out`
      : `it does not know the last entry, ${entries.length}`;
  return { sound: false, file: HEAD, what };
}

/** Every release is the file that was released. */
function withRecords(files: LedgerFiles, entries: readonly Entry[]): Ledger | undefined {
  for (const entry of entries) {
    if (entry.act !== 'release' && entry.act !== 'version') continue;
    const { path, sha256: wanted } = entry.record;
    const bytes = files.read(path);
    if (!bytes)
      return { sound: false, file: path, what: `${entry.model}@${entry.revision} was released and its file is gone` };
    if (sha256(bytes) !== wanted)
      return { sound: false, file: path, what: `it is not what was released as ${entry.model}@${entry.revision}` };
  }
  return undefined;
}

function parsed(bytes: Uint8Array): Record<string, unknown> | undefined {
  try {
    const value: unknown = JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
    return typeof value === 'object' && value !== null && !Array.isArray(value)
      ? (value as Record<string, unknown>)
      : undefined;
  } catch {
    return undefined;
  }
}
