/**
 * Releases: what joins the compiler, the ledger and the outside.
 *
 *     compile ─→ freeze ─→ models/released/<model>-<revision>-<hash>.json ─┐
 *                          models/released/ledger/000017.json ←────────────┴─ this step puts it in force
 *     ledger + records ─→ state on a day ─→ what hangs, what a code means, stored pages with status laid over them
 */
import type { Compiled } from './compile.ts';
import { isError } from './compile.ts';
import { printForRelease } from './printing.ts';
import type { Card, CardChanges } from './cards/card.ts';
import { stateOfModel, stateOfRelease } from './comparing.ts';
import type { ModelState } from './diff/model-state.ts';
import { changesSince } from './diff/since.ts';
import { factsOf } from './cards/facts-of.ts';
import type { Facts } from './facts/facts.ts';
import { leavesOf } from './facts/leaves.ts';
import { plantRow } from './facts/row.ts';
import { statesOf } from './facts/state.ts';
import type { Host } from './host/host.ts';
import type { PrintSheet } from './print/print.ts';
import { resolvedData } from './read/resolved.ts';
import type { Entry } from './release/entries.ts';
import { FOLDER, readLedger, sha256 } from './release/ledger.ts';
import { recordText } from './release/record.ts';
import type { Release, ReleasedCard, ReleasedSheet } from './release/record.ts';
import { hangs, stateOn } from './release/state.ts';
import type { State } from './release/state.ts';
import type { Known } from './release/wall.ts';

export interface Released {
  readonly state: State;
  readonly known: readonly Known[];
  readonly entries: readonly Entry[];
}

/** The ledger and its records on a day; or what is wrong with it, in a sentence with the file. */
export function openReleases(host: Host, on: string): Released | { readonly altered: string } {
  const ledger = readLedger(host);
  if (!ledger.sound) return { altered: `The ledger was altered: ${ledger.file}: ${ledger.what}.` };
  const state = stateOn(ledger.entries, on);
  const known = state.releases.map((released) => ({ released, record: recordAt(host, released.record.path) }));
  return { state, known, entries: ledger.entries };
}

/** It was read whole when the ledger was proved. */
const recordAt = (host: Host, path: string): Release =>
  JSON.parse(new TextDecoder().decode(host.read(path))) as Release;

export interface Frozen {
  readonly release: Release;
  /** Style, fonts and shell by SHA-256. */
  readonly assets: ReadonlyMap<string, Uint8Array>;
  /** Mistakes in templates and words: with an error nothing is released. */
  readonly broken: boolean;
}

/** A model as it stands, frozen. It has no error: its cards are there. `before`: the release before it. */
export function freeze(host: Host, compiled: Compiled, id: string, on: string, before?: Release): Frozen {
  const model = compiled.models.find((one) => one.id === id)!;
  const source = compiled.checked.workspace.models.find((one) => one.id === id)!;
  const { plant } = compiled.checked.workspace;
  const changes = before ? changesWith(before, stateOfModel(model, compiled.checked)) : new Map<string, CardChanges>();
  const printed = printForRelease(host, compiled, id, on, changes);
  const factsFor = (hand: string) => model.hands.find(({ subject }) => subject.hand === hand)!.facts;
  const cards = model.cards.map(({ card, code, reads }): ReleasedCard => ({
    key: card.key,
    code,
    station: card.station.text,
    files: filesOf(card, [...printed.files.keys()]),
    card,
    reads,
    rows: rowsOf(factsFor(card.key.hand), factsOf(card)),
    names: namedRows(factsOf(card)),
    ...(changes.has(code) ? { changes: changes.get(code)! } : {}),
    limits: printed.limits.get(code)!,
  }));
  const used = new Set(cards.flatMap(({ rows }) => rows));
  const plantLines = leavesOf(plant)
    .filter(({ id: leaf }) => used.has(plantRow(leaf) ?? ''))
    .map(({ id: leaf, text }) => [leaf, text] as const);
  const bytes = (content: string | Uint8Array) =>
    typeof content === 'string' ? new TextEncoder().encode(content) : content;
  const carried = [
    ...[...printed.files].filter(([path]) => path.startsWith('assets/')),
    ['shell', printed.shell] as const,
  ].map(([path, content]) => [path, bytes(content)] as const);
  const pages = [...printed.files].flatMap(([path, content]) =>
    // A page of all cards has a place for one status only: each card is a page of its own.
    path.startsWith('models/') && !path.endsWith('/index.html') && typeof content === 'string'
      ? [[path, content] as const]
      : [],
  );
  return {
    broken: printed.findings.some(isError),
    assets: new Map(carried.map(([, content]) => [sha256(content), content])),
    release: {
      format: 1,
      model: id,
      title: model.title,
      revision: model.revision,
      spec: JSON.stringify(resolvedData(source.root!, source.variants[0]!.spec)),
      plant: Object.fromEntries(plantLines),
      cards,
      facts: Object.fromEntries(model.hands.map(({ subject, facts }) => [subject.hand, statesOf(facts, subject)])),
      pages: Object.fromEntries(pages),
      sheets: printed.sheets.flatMap((sheet) => stretchOf(sheet, new Map(pages))),
      assets: Object.fromEntries(carried.map(([path, content]) => [path, sha256(content)])),
      language: printed.language,
      words: printed.words,
    },
  };
}

/** A card that stays as it was keeps what it showed of its last change. */
function changesWith(before: Release, now: ModelState): ReadonlyMap<string, CardChanges> {
  const kept = before.cards.flatMap(({ code, changes }) => (changes ? [[code, changes] as const] : []));
  return new Map([...kept, ...changesSince(stateOfRelease(before), now)]);
}

/** What became of the cards of each model since its release in force, by their codes. */
export function changesInForce({ known }: Released, { models, checked }: Compiled): ReadonlyMap<string, CardChanges> {
  const of = (id: string) => known.findLast(({ record, released }) => record.model === id && hangs(released));
  return new Map(
    models.flatMap((model) => {
      const before = of(model.id);
      return before && model.cards.length > 0 ? [...changesWith(before.record, stateOfModel(model, checked))] : [];
    }),
  );
}

/** As printing names them: the page, then its drawings, in each language. */
function filesOf({ key, drawings }: Card, paths: readonly string[]): readonly string[] {
  const name = `models/${key.model}/${key.station}${key.hand === 'left' ? '-left' : ''}`;
  const named = new Set(drawings.map((drawing) => `${name}-${drawing.id}`));
  return [`${name}.html`, ...paths.filter((path) => named.has(path.replace(/(?:\.[a-z]{2,3})?\.svg$/, '')))];
}

/** The body a sheet is printed from stands in the page of its card. */
function stretchOf(
  { name, title, paper, body }: PrintSheet,
  pages: ReadonlyMap<string, string>,
): readonly ReleasedSheet[] {
  const page = name.replace(/\.pdf$/, '.html');
  const from = pages.get(page)?.indexOf(body) ?? -1;
  return from < 0 ? [] : [{ name, title, paper, page, from, to: from + body.length }];
}

/** Rows whose title is one of these facts. */
const namedRows = (ids: Iterable<string>): readonly string[] =>
  [...ids].flatMap((id) => (id.endsWith('.title') ? (plantRow(id) ?? []) : [])).toSorted();

/** Rows of the plant behind these facts, by whatever way. */
function rowsOf(facts: Facts, ids: Iterable<string>): readonly string[] {
  const seen = new Set<string>();
  const rows = new Set<string>();
  const visit = (id: string): void => {
    if (seen.has(id)) return;
    seen.add(id);
    const row = plantRow(id);
    if (row !== undefined) rows.add(row);
    facts.fact(id)?.inputs.forEach(visit);
  };
  for (const id of ids) visit(id);
  return [...rows].toSorted();
}

/** Where a release lies: its name carries its content, so that two attempts never meet in one file. */
export function recordFile(release: Release): {
  readonly path: string;
  readonly text: string;
  readonly sha256: string;
} {
  const text = recordText(release);
  const hash = sha256(text);
  return { path: `${FOLDER}/${release.model}-${release.revision}-${hash.slice(0, 12)}.json`, text, sha256: hash };
}
