/** Something taken out: each leaf, each map, each item. */
import { dotted, isRow } from '../entries.ts';
import type { Entry } from '../entries.ts';
import type { Fault, Mark, Splice } from '../fault.ts';
import { faultAt } from '../fault.ts';
import type { Sound } from '../sound.ts';
import { at, plantFiles } from '../merged.ts';

export function removedFaults(sound: Sound, entries: readonly Entry[]): Fault[] {
  return entries.map((entry) => {
    const splices = [withoutEntry(sound, entry)];
    const near = [...entry.parents, firstKey(entry, entries)].map((offset) => ({ file: entry.file, offset }));
    const also = [...near, ...conflicting(sound, entry, entries)];
    const kind = entry.required ? 'removed, required' : 'removed, optional';
    return faultAt(sound, entry, { kind, splices, must: mustBeMissed(sound, entry), also, several: isTable(entry) });
  });
}

/** A whole table of the plant: every name in it is missing for itself. */
const isTable = ({ of, path }: Entry): boolean => of === 'plant' && path.length === 1;

/** Lines that no longer agree: uses of the row, the band of a finish or the finish of a band, the right hand's own. */
function conflicting(sound: Sound, entry: Entry, entries: readonly Entry[]): Mark[] {
  const { path, scalar, left, of } = entry;
  const named = (want: string): Mark[] => atPath(entries, want).map((one) => ({ file: one.file, offset: one.key[0] }));
  if (left) return entries.filter((one) => !one.left && isUnder(one.path, path.slice(2))).map(markOf);
  if (path[0] === 'finishes' && of === 'model') return named(`grades.${scalar}`);
  if (path[0] === 'grades' && path.length === 2 && of === 'model') return named('finishes');
  // The map a model's own file and its base both write: it is said at either.
  if (of !== 'plant')
    return atPath(entries, path.slice(0, -1).join('.'))
      .filter((one) => one.of === 'model')
      .map(markOf);
  if (path.length === 2) return [...usesOf(sound, path[1]!, path[0]!)];
  if (path.length > 1) return stationOf(path, entries);
  return entries
    .filter((one) => one.of === 'plant' && one.path[0] === path[0] && one.path.length === 2)
    .flatMap((one) => usesOf(sound, one.path[1]!, path[0]!));
}

const byPath = new WeakMap<readonly Entry[], ReadonlyMap<string, readonly Entry[]>>();

/** Entries of one path, in several files; every entry asks for some of them. */
function atPath(entries: readonly Entry[], path: string): readonly Entry[] {
  const known = byPath.get(entries) ?? grouped(entries);
  byPath.set(entries, known);
  return known.get(path) ?? [];
}

function grouped(entries: readonly Entry[]): ReadonlyMap<string, readonly Entry[]> {
  const groups = new Map<string, Entry[]>();
  for (const entry of entries) groups.set(dotted(entry), [...(groups.get(dotted(entry)) ?? []), entry]);
  return groups;
}

const markOf = ({ file, key }: Entry): Mark => ({ file, offset: key[0] });

const isUnder = (path: readonly string[], above: readonly string[]): boolean =>
  above.length <= path.length && above.every((key, i) => key === path[i]);

/** A gauge that is missing is missing at its station. */
export const stationOf = (path: readonly string[], entries: readonly Entry[]): Mark[] =>
  path[2] === 'gauges' ? atPath(entries, path.slice(0, 2).join('.')).map(markOf) : [];

/** The cut that takes an entry out and leaves the rest well formed. */
export function withoutEntry(sound: Sound, { file, flow, siblings, nth }: Entry): Splice {
  const text = sound.files[file]!;
  const [start, end] = siblings[nth]!;
  if (!flow) {
    const from = text.lastIndexOf('\n', start - 1) + 1;
    // In a list the line begins with the dash; a key that begins its line goes with the whole line.
    const stop = text.indexOf('\n', end - 1);
    return { file, from, to: stop < 0 ? text.length : stop + 1, text: '' };
  }
  const before = siblings[nth - 1];
  const after = siblings[nth + 1];
  if (after) return { file, from: start, to: after[0], text: '' };
  return { file, from: before ? before[1] : start, to: end, text: '' };
}

/** Where the map begins that the entry stands in: a missing key has no place of its own. */
const firstKey = (entry: Entry, entries: readonly Entry[]): number =>
  entry.parents[1] ?? entries.find(({ file }) => file === entry.file)!.key[0];

/**
 * What the schema calls optional but the job cannot do without: a part has no thickness, a face nobody cuts, a hand that
 * falls back on the other hand's fixture, a list that no longer agrees with the one beside it.
 */
function mustBeMissed(sound: Sound, entry: Entry): boolean {
  if (entry.required) return true;
  if (entry.shadowed) return false;
  if (dotted(entry) === 'setups.top.cutters.carve') return at(sound.model, ['carve', 'kind']) !== 'flat';
  const path = dotted(entry);
  if (entry.left) return /(fixture|program|jig)$/.test(path);
  if (entry.backed) return false;
  if (entry.path[0] === 'route' && entry.path.length === 2) return MAKES.has(entry.scalar!);
  return NEEDED.some((one) => one.test(path)) || rowInUse(sound, entry);
}

const NEEDED = [
  /^stages\.(cap|back|slab)(\.sized)?$/,
  /^stages\.body\.(back-faced|machined\.\w+)$/,
  /^setups\.back\.(faces|cutters(\.face)?)$/,
  /^setups\.top\.cutters(\.carve)?$/,
  /^setups\.top\.locates-on(\.\d)?$/,
  /^setups\.back\.pins$/,
  // On one pin a body turns.
  /^patterns\.[\w-]+\.holes(\.[\w-]+)?$/,
  /^grades\.[\w-]+$/,
  /^finishes\.\d+$/,
  /^cavities(\.neck-pocket)?$/,
  /^holes(\.tooling-hole-[ab])?$/,
  /^(route|stations|machines|cutters|gauges|species|stock|lines|fixtures|jigs|patterns|finishes|plant|grades|adhesives)$/,
  // A set-up that pins the body needs a fixture with those pins.
  /^fixtures\.[\w-]+-back-\w+\.pattern$/,
  /^lines\.\w+\.(cap|back|slab|glue-line)$/,
];

/** Stations without which a body of a cap and a back, both of several boards, is not made. */
const MAKES = new Set([
  'jointing',
  'edge-gluing',
  'planing',
  'rough-sawing',
  'sizing',
  'lamination',
  'press',
  'trim-sawing',
  'machining-back',
  'machining-top',
]);

const rowInUse = (sound: Sound, entry: Entry): boolean =>
  isRow(entry) && namedElsewhere(sound, entry.path[1]!, entry.path[0]!);

/** Whether the model, what it is based on, or another table of the plant names a row. */
export function namedElsewhere(sound: Sound, name: string, table: string): boolean {
  return usesOf(sound, name, table).length > 0;
}

type Use = { readonly file: string; readonly offset: number };

/** Asked for every entry of a row, and each time of all files: found once. */
const found = new WeakMap<Sound, Map<string, readonly Use[]>>();

/** Places where a name stands as a value or in a list: every use of a plant row, but for the key of the row itself. */
export function usesOf(sound: Sound, name: string, table: string): readonly Use[] {
  const known = found.get(sound) ?? new Map<string, readonly Use[]>();
  found.set(sound, known);
  const key = `${table} ${name}`;
  const uses = known.get(key) ?? searched(sound, name, table);
  known.set(key, uses);
  return uses;
}

function searched(sound: Sound, name: string, table: string): readonly Use[] {
  const files = [...sound.layers, ...plantFiles(sound.files)];
  const pattern = new RegExp(`(?<![\\w-])${name}(?![\\w-])`, 'g');
  return files.flatMap((file) =>
    [...sound.files[file]!.matchAll(pattern)]
      .filter(({ index }) => {
        const text = sound.files[file]!;
        const after = text.slice(index + name.length).startsWith(':');
        const before = /(: |\[|, |- )$/.test(text.slice(Math.max(0, index - 2), index));
        const comment = text.slice(text.lastIndexOf('\n', index) + 1, index).includes('#');
        // A finish is named by its band; a row of the table is named by itself.
        return !comment && (after ? ['finishes', 'grades'].includes(table) && sound.layers.includes(file) : before);
      })
      .map(({ index }) => ({ file, offset: index })),
  );
}
