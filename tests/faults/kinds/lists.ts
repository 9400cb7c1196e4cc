/** Lists: an item twice, a step left out of a band, a step or scale nobody knows, a finish with no band, too good a grade. */
import { dotted } from '../entries.ts';
import type { Entry } from '../entries.ts';
import type { Fault, Mark, Splice } from '../fault.ts';
import { faultAt } from '../fault.ts';
import { at, treeAt } from '../merged.ts';
import type { Sound } from '../sound.ts';
import { usesOf } from './removed.ts';

export const listFaults = (sound: Sound, entries: readonly Entry[]): Fault[] => [
  ...entries.flatMap((entry) => duplicated(sound, entry)),
  ...entries.flatMap((entry) => bandFaults(sound, entry, entries)),
  ...entries.flatMap((entry) => unknownScale(sound, entry)),
];

const lists = /^(route|finishes|setups\.\w+\.locates-on|grades\.[\w-]+\.steps|grades\.[\w-]+\.[\w-]+)\.\d+$/;

function duplicated(sound: Sound, entry: Entry): Fault[] {
  const { file, scalar, value, flow } = entry;
  if (scalar === undefined || !lists.test(dotted(entry))) return [];
  const line = sound.files[file]!.lastIndexOf('\n', value[0]) + 1;
  const indent = sound.files[file]!.slice(line, value[0]);
  const splices = [{ file, from: value[1], to: value[1], text: flow ? `, ${scalar}` : `\n${indent}${scalar}` }];
  const also = [...entry.parents, value[1] + 1].map((offset) => ({ file, offset }));
  // A body cannot pass a station twice, be held by one hole, or a step be better than itself. A finish or a step of a
  // band said twice says nothing wrong.
  const must = /^route|locates-on|steps/.test(dotted(entry));
  return [faultAt(sound, entry, { kind: 'item twice', splices, must, also })];
}

/** A band of the model, as a list in the order of its scale. */
function bandFaults(sound: Sound, entry: Entry, entries: readonly Entry[]): Fault[] {
  const { of, path, file, value } = entry;
  if (of !== 'model' || path[0] !== 'grades' || path.length !== 3) return [];
  const [, finish = '', scale = ''] = path;
  const plant = sound.plant;
  const steps = treeAt(plant, ['grades', scale])['steps'] as string[] | undefined;
  if (!steps) return [];
  const band = (list: readonly string[]): Splice[] => [
    { file, from: value[0], to: value[1], text: `[${list.join(', ')}]` },
  ];
  const table = entries.find((one) => one.of === 'plant' && dotted(one) === `grades.${scale}`);
  const also: Mark[] = [
    ...(table ? [{ file: table.file, offset: table.key[0] }] : []),
    ...usesOf(sound, finish, 'finishes'),
  ];
  const opaque = at(plant, ['finishes', finish, 'kind']) === 'opaque';
  const wasted = String(at(plant, ['grades', scale, 'wasted-from']));
  return [
    // Under an opaque finish the best step is a mistake of its own.
    ...(steps.length > 2 && !(opaque && steps.includes(wasted))
      ? [faultAt(sound, entry, { kind: 'gap in a band', splices: band([steps[0]!, steps.at(-1)!]), must: true, also })]
      : []),
    faultAt(sound, entry, {
      kind: 'unknown step',
      splices: band([...steps.slice(0, 1), 'gorgeous']),
      must: true,
      also,
    }),
    faultAt(sound, entry, { kind: 'no step at all', splices: band([]), must: true, also }),
    ...(opaque && steps.includes(wasted)
      ? [
          faultAt(sound, entry, {
            kind: 'figured under opaque',
            splices: band(steps.slice(0, steps.indexOf(wasted) + 1)),
            must: true,
            also,
          }),
        ]
      : []),
  ];
}

function unknownScale(sound: Sound, entry: Entry): Fault[] {
  const { of, path, file, value, key, scalar } = entry;
  if (of !== 'model' || path[0] !== 'grades') return [];
  if (path.length === 3) {
    const splices = [{ file, from: key[0], to: key[1], text: 'shimmer' }];
    return [faultAt(sound, entry, { kind: 'unknown scale', splices, must: true })];
  }
  if (path.length !== 2 || scalar !== undefined) return [];
  const own = sound.files[file]!.slice(value[0], value[1]);
  const indent = ' '.repeat(key[0] - sound.files[file]!.lastIndexOf('\n', key[0]) - 1);
  const twice = `green-unknown: ${own}\n${indent}`;
  const splices = [{ file, from: key[0], to: key[0], text: twice }];
  const also = [{ file, offset: key[0] - 1 }];
  const moved = { ...entry, key: [key[0] - 1, key[1]] as const };
  return [
    faultAt(sound, moved, {
      kind: 'band for a finish not offered',
      splices,
      must: true,
      also: [...also, ...entry.parents.map((offset) => ({ file, offset }))],
    }),
  ];
}
