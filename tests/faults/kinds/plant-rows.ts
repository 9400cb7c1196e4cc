/** Rows of the plant: retired, defined twice, exchanged with each other. */
import { dotted, isRow } from '../entries.ts';
import type { Entry } from '../entries.ts';
import type { Fault } from '../fault.ts';
import { faultAt } from '../fault.ts';
import type { Sound } from '../sound.ts';
import { usesOf } from './removed.ts';

export const rowFaults = (sound: Sound, entries: readonly Entry[]): Fault[] => [
  ...entries
    .filter(isRow)
    .flatMap((entry) => [...retired(sound, entry), twice(sound, entry), twiceInOneFile(sound, entry)]),
  ...entries.flatMap((entry) => linesExchanged(sound, entry, entries)),
  ...entries.flatMap((entry) => thinnerBoard(sound, entry, entries)),
];

function retired(sound: Sound, entry: Entry): Fault[] {
  const { file, path, schema, value } = entry;
  if (!schema.properties?.['retired']) return [];
  const [table = '', name = ''] = path;
  const uses = usesOf(sound, name, table);
  const text = sound.files[file]!;
  const flow = text[value[0]] === '{';
  const indent = ' '.repeat(value[0] - text.lastIndexOf('\n', value[0]) - 1);
  const splice = flow
    ? { file, from: value[0] + 1, to: value[0] + 1, text: ' retired: 2020-01-01,' }
    : { file, from: value[0], to: value[0], text: `retired: 2020-01-01\n${indent}` };
  const also = [...uses, { file, offset: value[0] }, { file, offset: value[0] - 1 }];
  return [faultAt(sound, entry, { kind: 'row retired', splices: [splice], must: uses.length > 0, also })];
}

/** The same row again in a file of its own. */
function twice(sound: Sound, entry: Entry): Fault {
  const { file, key, value, path } = entry;
  const own = sound.files[file]!.slice(key[0], value[1]);
  const again = 'models/plant/zz-again.yaml';
  const text = `units: mm\n${path[0]}:\n  ${own}\n`;
  const also = [{ file: again, offset: text.indexOf(own) }];
  return faultAt(sound, entry, {
    kind: 'row defined twice',
    splices: [{ file: again, from: 0, to: 0, text }],
    must: true,
    also: also.map((one) => ({ ...one, offset: one.offset - text.length })),
  });
}

/** The same row again under itself, as a copied line stays behind. */
function twiceInOneFile(sound: Sound, entry: Entry): Fault {
  const { file, key, value } = entry;
  const text = sound.files[file]!;
  const line = text.lastIndexOf('\n', key[0]) + 1;
  const own = text.slice(line, value[1]);
  const splices = [{ file, from: line, to: line, text: `${own.trimEnd()}\n` }];
  return faultAt(sound, entry, {
    kind: 'row twice in one file',
    splices,
    must: true,
    also: [{ file, offset: line - 1 }],
  });
}

function linesExchanged(sound: Sound, entry: Entry, entries: readonly Entry[]): Fault[] {
  if (!/^lines\.\w+\.rough-line$/.test(dotted(entry))) return [];
  const trim = entries.find((one) => dotted(one) === dotted(entry).replace('rough', 'trim'))!;
  const { file } = entry;
  const splices = [
    { file, from: entry.value[0], to: entry.value[1], text: trim.scalar! },
    { file, from: trim.value[0], to: trim.value[1], text: entry.scalar! },
  ];
  const used = usesOf(sound, entry.path[1]!, 'lines').length > 0;
  return [
    faultAt(sound, entry, {
      kind: 'rough and trim line exchanged',
      splices,
      must: used,
      also: [{ file, offset: trim.key[0] }],
    }),
  ];
}

/** The next thinner board that is sold: 13/16 for 7/8, 1-1/4 for 1-1/2. */
function thinnerBoard(sound: Sound, entry: Entry, entries: readonly Entry[]): Fault[] {
  if (!/^stock\.[\w-]+\.least-thickness$/.test(dotted(entry))) return [];
  const { file, path } = entry;
  const rough = entries.find((one) => dotted(one) === `stock.${path[1]}.rough`)!;
  const splices = [rough, entry].map(({ value }) => ({ file, from: value[0], to: value[1], text: '5/8 in' }));
  const uses = usesOf(sound, path[1]!, 'stock');
  return [
    faultAt(sound, entry, {
      kind: 'thinner board',
      splices,
      must: uses.length > 0,
      also: [{ file, offset: rough.key[0] }, ...uses],
    }),
  ];
}
