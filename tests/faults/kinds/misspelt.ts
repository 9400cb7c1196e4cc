/** One letter wrong: in a key, in the name of a row, in a word of a list, in a reference. */
import { dotted } from '../entries.ts';
import type { Entry } from '../entries.ts';
import type { Fault } from '../fault.ts';
import { faultAt, valued } from '../fault.ts';
import type { Sound } from '../sound.ts';
import { isTree } from '../merged.ts';
import { seedOf, seeded } from '../seeded.ts';
import { stationOf, usesOf } from './removed.ts';

export const misspeltFaults = (sound: Sound, entries: readonly Entry[]): Fault[] => [
  ...entries.flatMap((entry) => misspeltKey(sound, entry, entries)),
  ...entries.flatMap((entry) => misspeltValue(sound, entry)),
  ...entries.flatMap((entry) => ofOtherTable(sound, entry)),
];

function misspeltKey(sound: Sound, entry: Entry, entries: readonly Entry[]): Fault[] {
  const { file, key, path } = entry;
  const [from, to] = key;
  if (from === entry.value[0]) return [];
  const splices = [{ file, from, to, text: oneLetterWrong(sound.files[file]!.slice(from, to)) }];
  const also = [
    ...entry.parents.map((offset) => ({ file, offset })),
    ...(entry.free ? usesOf(sound, path.at(-1)!, path[0]!) : []),
    ...stationOf(path, entries),
  ];
  const kind = entry.free ? 'name of a row misspelt' : 'key misspelt';
  return [faultAt(sound, entry, { kind, splices, also, must: entry.free ? nameMatters(sound, entry) : true })];
}

/** A name of one's own may be any; it matters where something goes by it. */
function nameMatters(sound: Sound, { of, path }: Entry): boolean {
  const [table = '', name = '', third] = path;
  if (third === undefined && of === 'plant') return usesOf(sound, name, table).length > 0;
  // Whether a height or a hole is read depends on what is cut there.
  if (third === 'gauges') return !['height', 'hole'].includes(path.at(-1)!);
  if (third !== undefined && table === 'patterns') return false;
  // Cards number pictures; what they are called stands on none.
  if (table === 'pictures') return false;
  if (table === 'cavities') return name === 'neck-pocket';
  if (table === 'holes') return name.startsWith('tooling-hole');
  return true;
}

function misspeltValue(sound: Sound, entry: Entry): Fault[] {
  const { schema, scalar, shadowed } = entry;
  if (scalar === undefined || !(schema.refers ?? schema.enum)) return [];
  const kind = schema.refers ? 'reference misspelt' : 'word misspelt';
  // A word the schema lists is read in every file; a reference only where it is used.
  return [faultAt(sound, entry, { kind, splices: valued(entry, oneLetterWrong(scalar)), must: !shadowed })];
}

function ofOtherTable(sound: Sound, entry: Entry): Fault[] {
  const { schema, scalar, shadowed } = entry;
  if (scalar === undefined || !schema.refers?.startsWith('plant.')) return [];
  const plant = sound.plant;
  const own = schema.refers.slice('plant.'.length);
  const names = Object.entries(plant)
    .filter(([table, rows]) => table !== own && table !== 'plant' && isTree(rows))
    .flatMap(([, rows]) => Object.keys(rows as object))
    .filter((name) => !(name in (plant[own] as object)));
  const other = seeded(seedOf(`${sound.name} ${dotted(entry)}`)).pick(names);
  const kind = 'reference to another table';
  return [faultAt(sound, entry, { kind, what: other, splices: valued(entry, other), must: !shadowed })];
}

/** Two letters exchanged, or one doubled where they are alike: what fingers do. */
export function oneLetterWrong(word: string): string {
  const letters = [...word];
  const middle = letters.findIndex(
    (one, i) => i > 0 && /\w/.test(one) && /\w/.test(letters[i + 1] ?? '') && one !== letters[i + 1],
  );
  if (middle < 0) return `${word}x`;
  return [...letters.slice(0, middle), letters[middle + 1], letters[middle], ...letters.slice(middle + 2)].join('');
}
