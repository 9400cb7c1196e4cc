/** Faults of a model as a whole: stages out of order, places outside the body, a broken outline, programs, revisions. */
import { dotted } from '../entries.ts';
import type { Entry } from '../entries.ts';
import type { Fault } from '../fault.ts';
import { faultAt, valued } from '../fault.ts';
import { plain, sizeOf, withFirst } from '../quantity.ts';
import type { Sound } from '../sound.ts';

export function modelFaults(sound: Sound, entries: readonly Entry[]): Fault[] {
  const own = entries.filter(({ of, shadowed }) => of === 'model' && !shadowed);
  return own.flatMap((entry) => [
    ...stagePastNeighbour(sound, entry, own),
    ...farOff(sound, entry),
    ...brokenPath(sound, entry),
    ...programTwice(sound, entry, own),
    ...revisions(sound, entry),
    ...handless(sound, entry, own),
  ]);
}

/** Each stage of the body on the other side of the one beside it. */
function stagePastNeighbour(sound: Sound, entry: Entry, entries: readonly Entry[]): Fault[] {
  const path = dotted(entry);
  if (!path.startsWith('stages.body.') || entry.scalar === undefined) return [];
  const stages = entries.filter((one) => one.scalar !== undefined && dotted(one).startsWith('stages.body.'));
  const bare = /^units: (\w+)/m.exec(sound.files[entry.file]!)![1]!;
  const own = sizeOf(entry.scalar, bare)!;
  return stages
    .filter((one) => one !== entry && neighbours(path, dotted(one)))
    .map((one) => {
      const other = sizeOf(one.scalar, bare)!;
      // As far beyond it as it was before it.
      const to = (2 * other.nominal - own.nominal) / (bare === 'in' ? 25.4 : 1);
      const splices = valued(
        entry,
        withFirst(entry.scalar!, () => plain(to)),
      );
      const also = [{ file: one.file, offset: one.key[0] }];
      return faultAt(sound, entry, { kind: 'stage past its neighbour', what: dotted(one), splices, must: true, also });
    });
}

function neighbours(one: string, other: string): boolean {
  const of = (path: string): string => path.replace(/^stages\.body\./, '');
  const point = (path: string): string => of(path).split('.')[1] ?? '';
  const pair = [of(one).split('.')[0], of(other).split('.')[0]].join(' ');
  if (['machined white', 'white machined'].includes(pair)) return point(one) === point(other);
  return ['back-faced machined', 'machined back-faced'].includes(pair) && ![point(one), point(other)].includes('land');
}

/** A cavity or hole hundreds of millimetres away: no part of it is in the body. */
function farOff(sound: Sound, entry: Entry): Fault[] {
  if (!/^(cavities|holes)\.[\w-]+\.at\.[xy]$/.test(dotted(entry)) || entry.scalar === undefined) return [];
  const file = sound.files[entry.file]!;
  const by = /^units: in/m.test(file) ? 25.4 : 1;
  return [900, -900].map((far) => {
    const splices = valued(
      entry,
      withFirst(entry.scalar!, (value) => plain(value + far / by)),
    );
    return faultAt(sound, entry, { kind: 'place outside the body', what: String(far), splices, must: true });
  });
}

function brokenPath(sound: Sound, entry: Entry): Fault[] {
  if (!dotted(entry).endsWith('path') || entry.scalar === undefined) return [];
  const path = entry.scalar;
  const numbers = [...path.matchAll(/-?\d+(\.\d+)?/g)];
  const middle = numbers[Math.floor(numbers.length / 2)]!;
  const cut = path.slice(0, middle.index) + path.slice(middle.index + middle[0].length).trimStart();
  const ways: [string, string][] = [
    ['a number missing', cut],
    ['not closed', path.replace(/\s*Z\s*$/, '')],
    ['unknown letter', path.replace(/ [CL] /, ' W ')],
    ['no start', path.replace(/^M/, 'L')],
    ['a point elsewhere', path.replace(middle[0], '9000')],
    ['cut short', path.slice(0, Math.floor(path.length / 2))],
    ['comma for a point', path.replace(/(\d)\.(\d)/, '$1,$2')],
  ];
  return ways
    .filter(([, text]) => text !== path)
    .map(([what, text]) =>
      faultAt(sound, entry, { kind: 'path broken', what, splices: valued(entry, text), must: what !== 'not closed' }),
    );
}

function programTwice(sound: Sound, entry: Entry, entries: readonly Entry[]): Fault[] {
  if (!/setups\.[\w-]+\.program$/.test(dotted(entry))) return [];
  return entries
    .filter((one) => one !== entry && /setups\.[\w-]+\.program$/.test(dotted(one)))
    .map((one) =>
      faultAt(sound, entry, {
        kind: 'program number twice',
        what: dotted(one),
        splices: valued(entry, sound.files[one.file]!.slice(...one.value)),
        must: true,
        also: [{ file: one.file, offset: one.key[0] }],
      }),
    );
}

/** Letters that read as digits or as each other are not used for revisions; nor is more than the letters. */
const revisions = (sound: Sound, entry: Entry): Fault[] =>
  dotted(entry) === 'revision'
    ? ['I', 'O', 'Q', 'S', 'X', 'Z', 'AI', 'c', 'C1', '3', 'ABCD'].map((text) =>
        faultAt(sound, entry, {
          kind: 'revision letter not allowed',
          what: text,
          splices: valued(entry, text),
          must: true,
        }),
      )
    : [];

/** The left hand without anything of its own: every fixture and program is a mistake for itself. */
function handless(sound: Sound, entry: Entry, entries: readonly Entry[]): Fault[] {
  if (dotted(entry) !== 'handed.left') return [];
  const also = entries
    .filter((one) => !one.left && /(fixture|program|jig)$/.test(dotted(one)))
    .map((one) => ({ file: one.file, offset: one.key[0] }));
  const kind = 'left hand with the right hand’s things';
  return [faultAt(sound, entry, { kind, splices: valued(entry, '{}'), must: true, also, several: true })];
}
