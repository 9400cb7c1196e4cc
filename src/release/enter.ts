/** Writing to the ledger: an entry is in force, whole, or it is not there. */
import type { Entry } from './entries.ts';
import { entryPath, entryText, FOLDER, HEAD, headText, readLedger, sha256 } from './ledger.ts';
import type { Ledger, LedgerFiles } from './ledger.ts';

type Put = { readonly created: true } | { readonly failed: string };

/** What entering needs of the outside: each file whole or not at all. */
export interface LedgerHost extends LedgerFiles {
  /** Never over one that is there. */
  create(path: string, text: string | Uint8Array): Put;
  replace(path: string, text: string | Uint8Array): Put;
}

/**
 * Writes what an entry needs, then the entry: before that step nothing is released, after it all is. What a crash leaves
 * without an entry is named by its own content and found again or never looked at.
 */
export function enter(
  host: LedgerHost,
  make: (ledger: Extract<Ledger, { sound: true }>) => Entry,
  frozen?: { readonly path: string; readonly text: string; readonly assets: ReadonlyMap<string, Uint8Array> },
): { readonly entered: Entry } | { readonly failed: string } {
  const ledger = readLedger(host);
  if (!ledger.sound) return { failed: `The ledger was altered: ${ledger.file}: ${ledger.what}.` };
  const entry = make(ledger);
  const last = ledger.entries.at(-1);
  if (last && entry.on < last.on)
    return {
      failed: `The last entry of the ledger is of ${last.on}: one of ${entry.on} would change what was said since.`,
    };
  const failed = (frozen && writeFrozen(host, frozen)) ?? mendHead(host, ledger);
  if (failed !== undefined) return { failed };
  const number = ledger.entries.length + 1;
  const text = entryText(number, ledger.last, entry);
  const made = host.create(entryPath(number), text);
  if ('failed' in made) return { failed: `Nothing was entered: ${made.failed}` };
  const head = host.replace(HEAD, headText(number, sha256(text)));
  // The entry is in force; the next one puts the head right.
  return 'failed' in head ? { failed: `It is entered, but ${head.failed}` } : { entered: entry };
}

function mendHead(
  host: LedgerHost,
  { headIsBehind, entries, last }: Extract<Ledger, { sound: true }>,
): string | undefined {
  if (!headIsBehind) return undefined;
  const head = host.replace(HEAD, headText(entries.length, last));
  return 'failed' in head ? head.failed : undefined;
}

function writeFrozen(
  host: LedgerHost,
  {
    path,
    text,
    assets,
  }: { readonly path: string; readonly text: string; readonly assets: ReadonlyMap<string, Uint8Array> },
): string | undefined {
  const files: (readonly [string, string | Uint8Array])[] = [
    ...[...assets].map(([hash, bytes]) => [`${FOLDER}/assets/${hash}`, bytes] as const),
    [path, text],
  ];
  for (const [file, content] of files) {
    if (host.read(file) !== undefined) continue;
    const made = host.create(file, content);
    if ('failed' in made) return made.failed;
  }
  return undefined;
}
