/** A right word in the wrong place: another of the words allowed, another row of the same table, another set-up. */
import { dotted, isRow } from '../entries.ts';
import type { Entry } from '../entries.ts';
import type { Fault, Mark } from '../fault.ts';
import { faultAt, planted, valued } from '../fault.ts';
import type { Tree } from '../merged.ts';
import { at, treeAt } from '../merged.ts';
import { seedOf, seeded } from '../seeded.ts';
import type { Sound } from '../sound.ts';
import { unsound } from '../trade.ts';
import { usesOf } from './removed.ts';

export const wordFaults = (sound: Sound, entries: readonly Entry[]): Fault[] => [
  ...entries.flatMap((entry) => otherWord(sound, entry, entries)),
  ...entries.flatMap((entry) => otherRow(sound, entry, entries)),
  ...entries.flatMap((entry) => emptied(sound, entry)),
];

function otherWord(sound: Sound, entry: Entry, entries: readonly Entry[]): Fault[] {
  const { schema, scalar, path, of } = entry;
  if (scalar === undefined) return [];
  const also = of === 'plant' && path.length > 2 ? usesOf(sound, path[1]!, path[0]!) : [];
  const others = (schema.enum ?? []).filter((word) => word !== scalar);
  // Every word of a set-up; of the plant's long lists a few.
  return some(sound, entry, others, of === 'plant' ? 2 : Infinity).map((word) => {
    const splices = valued(entry, word);
    const kind = /^setups|\.(from|setup)$/.test(dotted(entry)) ? 'wrong set-up or surface' : 'another word of the list';
    const must = (): boolean =>
      !entry.shadowed &&
      (wrongWord(sound, entry, word) || unsound(planted(sound.files, splices), sound.layers).length > 0);
    return faultAt(sound, entry, {
      kind,
      what: word,
      splices,
      must,
      also: [...also, ...requirement(entry, entries)],
    });
  });
}

function some(sound: Sound, entry: Entry, words: readonly string[], count: number): string[] {
  return seeded(seedOf(`${sound.name} ${dotted(entry)}`))
    .shuffle(words)
    .slice(0, count);
}

/** A depth and the surface it is counted from are one requirement over two lines. */
const requirement = (entry: Entry, entries: readonly Entry[]): Mark[] =>
  entries
    .filter((one) => dotted(entry).endsWith('.from') && dotted(one) === dotted(entry).replace(/from$/, 'depth'))
    .map(({ file, key }) => ({ file, offset: key[0] }));

/** Words that cannot be right where they stand. */
function wrongWord(sound: Sound, entry: Entry, word: string): boolean {
  const path = dotted(entry);
  const model = sound.model;
  const plant = sound.plant;
  const capped = at(model, ['timber', 'slab']) === undefined;
  const faced = at(model, ['setups', 'back', 'faces']) !== undefined;
  if (/^setups\.\w+\.up$/.test(path)) return true;
  // Back up, the blank lies on its top; top up, on its back: the faced one, once it is faced.
  if (path === 'setups.back.rests-on') return word !== (capped ? 'cap-face' : 'slab-face');
  if (path === 'setups.top.rests-on') return word !== 'back-face' && (faced || word !== 'blank-back');
  if (path === 'carve.kind') return entry.scalar === 'arched' || word === 'arched';
  if (/^(cavities|holes)\.[\w-]+\.from$/.test(path)) return !reachable(model, entry, word, capped);
  if (path.endsWith('.shape.kind'))
    return word === 'circle' || word === 'path' || entry.scalar === 'circle' || entry.scalar === 'path';
  if (entry.of === 'plant') return wrongInPlant(sound, entry, word, plant);
  return path === 'units';
}

/** The face a set-up cuts from, or one inside the wood: a depth counted from the far side has no sense. */
function reachable(model: Tree, entry: Entry, word: string, capped: boolean): boolean {
  const setup = at(model, [...entry.path.slice(0, 2), 'setup']);
  const top = capped ? ['cap-face', 'machined-top', 'glue-face'] : ['slab-face', 'machined-top'];
  return (setup === 'top' ? top : ['back-face', 'blank-back']).includes(word);
}

function wrongInPlant(sound: Sound, { path, scalar }: Entry, word: string, plant: Tree): boolean {
  const [table = '', name = '', key] = path;
  if (usesOf(sound, name, table).length === 0) return path.length === 1 && path[0] === 'units';
  if (key === 'hand') return word !== 'both';
  if (key === 'reads') return word !== scalar;
  // A drill does not mill a pocket.
  if (table === 'cutters' && key === 'kind') return word === 'drill';
  // Figured wood under an opaque finish: only where the plant says from which step on it is wasted.
  const wasted = Object.entries(treeAt(plant, ['grades'])).some(([scale, row]) => {
    const steps = at(row, ['steps']) as string[];
    const from = steps.indexOf(String(at(row, ['wasted-from'])));
    const band = at(sound.model, ['grades', name, scale]) as string[] | undefined;
    return from >= 0 && band?.some((step) => steps.indexOf(step) >= from);
  });
  return table === 'finishes' && key === 'kind' && word === 'opaque' && wasted;
}

/** Another row of the same table, cavity, hole or set-up. */
function otherRow(sound: Sound, entry: Entry, entries: readonly Entry[]): Fault[] {
  const { schema, scalar } = entry;
  if (scalar === undefined || schema.refers === undefined) return [];
  const [of, table = ''] = schema.refers.split('.');
  const tree = of === 'plant' ? sound.plant : sound.model;
  const names = Object.keys(treeAt(tree, [table])).filter((name) => name !== scalar && name !== 'remove');
  return some(sound, entry, names, of === 'plant' ? 2 : Infinity).map((name) => {
    const splices = valued(entry, name);
    const kind = table === 'setups' ? 'moved to another set-up' : 'another row of the table';
    const must = (): boolean =>
      !entry.shadowed &&
      (wrongRow(sound, entry, name) || unsound(planted(sound.files, splices), sound.layers).length > 0);
    // Another board is of another species, and it may be too thin as well.
    return faultAt(sound, entry, {
      kind,
      what: name,
      splices,
      must,
      several: table === 'stock',
      also: bandOf(entry, entries),
    });
  });
}

/** The band of the finish that is no longer offered. */
const bandOf = (entry: Entry, entries: readonly Entry[]): Mark[] =>
  entries
    .filter((one) => entry.path[0] === 'finishes' && dotted(one) === `grades.${entry.scalar}`)
    .map(({ file, key }) => ({ file, offset: key[0] }));

function wrongRow(sound: Sound, entry: Entry, name: string): boolean {
  const path = dotted(entry);
  const plant = sound.plant;
  const row = (table: string): unknown => at(plant, [table, name]);
  const hand = entry.left ? 'left' : 'right';
  if (path.endsWith('.setup')) {
    const from = at(sound.model, [...entry.path.slice(0, 2), 'from']);
    return from !== undefined;
  }
  if (/(fixture|jig)$/.test(path)) {
    const other = row(path.endsWith('jig') ? 'jigs' : 'fixtures');
    const pins = at(sound.model, path.endsWith('jig') ? ['setups', 'back', 'pins'] : [...setupOf(entry), 'pins']);
    return ![hand, 'both'].includes(String(at(other, ['hand']))) || at(other, ['pattern']) !== pins;
  }
  if (/^setups\.\w+\.pins$/.test(path)) return true;
  if (path === 'neck.pocket') return at(sound.model, ['cavities', name, 'purpose']) !== 'neck';
  if (/^setups\.\w+\.cutters\.\w+$/.test(path)) return at(row('cutters'), ['kind']) === 'drill';
  if (/^setups\.\w+\.machine$/.test(path)) return at(row('machines'), ['kind']) !== 'router';
  if (/^finishes\.\d+$/.test(path)) return true;
  if (/^stations\.[\w-]+\.gauges\./.test(path)) {
    const reads = at(row('gauges'), ['reads']) !== at(plant, ['gauges', entry.scalar!, 'reads']);
    // A tape reads whole millimetres, and no limits of a thickness or depth hold four of them.
    return reads || (name === 'tape' && /(thickness|depth|hole)$/.test(path));
  }
  if (/^cavities\.[\w-]+\.cutter$/.test(path)) return at(row('cutters'), ['kind']) === 'drill';
  if (/^stations\.[\w-]+\.machine$/.test(path))
    return at(row('machines'), ['kind']) !== at(plant, ['machines', entry.scalar!, 'kind']);
  return /^setups\.top\.locates-on\.\d$/.test(path) || /^route\.\d+$/.test(path);
}

/** The set-up of a fixture, of the left hand too. */
const setupOf = ({ path }: Entry): readonly string[] => path.slice(path.indexOf('setups'), -1);

function emptied(sound: Sound, entry: Entry): Fault[] {
  const { schema, scalar, shadowed } = entry;
  if (scalar === undefined || schema.quantity !== undefined) return [];
  return [
    faultAt(sound, entry, {
      kind: 'text emptied',
      splices: valued(entry, "''"),
      must: !shadowed || isRow(entry),
      several: dotted(entry) === 'based-on',
    }),
  ];
}
