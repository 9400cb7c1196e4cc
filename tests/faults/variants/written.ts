/** The same said with other marks: comments, blank lines, order of keys, braces or indents. */
import type { Document, Pair, YAMLMap } from 'yaml';
import { isCollection, isMap, parseDocument, visit } from 'yaml';
import { entriesOf } from '../entries.ts';
import type { Seeded } from '../seeded.ts';
import type { Sound } from '../sound.ts';
import type { Way } from './variant.ts';

/** One of the files the model is read from. */
const anyFile = ({ files }: Sound, chance: Seeded): string => chance.pick(Object.keys(files));

export const comments: Way = {
  name: 'comments and blank lines',
  same: true,
  apply: (sound, chance) => {
    const file = anyFile(sound, chance);
    const lines = sound.files[file]!.split('\n').map((line) => {
      const turn = chance.whole(6);
      if (turn === 0) return `\n${line}`;
      if (turn === 1) return `# ${chance.whole(900)} mm: a remark with a number, a colon and a 'quote\n${line}`;
      if (turn === 2 && line !== '' && !line.includes('#')) return `${line} # remark ${chance.whole(90)}`;
      return line;
    });
    return { ...sound.files, [file]: lines.join('\n') };
  },
};

/** Keys the schema knows may stand in any order. */
export const order: Way = {
  name: 'order of keys',
  same: true,
  apply: (sound, chance) => shuffled(sound, chance, false),
};

/** Names of the user's own are listed on cards in the order they are written in: other cards, but just as sound. */
export const listing: Way = {
  name: 'order of names',
  same: false,
  apply: (sound, chance) => shuffled(sound, chance, true),
};

function shuffled(sound: Sound, chance: Seeded, names: boolean): Record<string, string> {
  const namesAt = new Set(
    entriesOf(sound).flatMap(({ file, free, parents }) => (free ? [`${file} ${parents[1]}`] : [])),
  );
  return rewritten(sound, chance, (document, file) =>
    visit(document, {
      Map(_, map) {
        if (namesAt.has(`${file} ${map.range?.[0]}`) === names) map.items = chance.shuffle(map.items);
      },
    }),
  );
}

export const braces: Way = {
  name: 'braces or indents',
  same: true,
  apply: (sound, chance) =>
    rewritten(sound, chance, (document) =>
      visit(document, {
        Collection(_, node) {
          if (node === document.contents || chance.whole(2) === 0) return;
          node.flow = node.flow !== true;
          // Inside braces there are no comments and no indents.
          if (node.flow) visit(node, (__, inner) => bare(inner));
        },
      }),
    ),
};

function bare(node: unknown): void {
  const commented = node as { comment?: string | null; commentBefore?: string | null; spaceBefore?: boolean };
  if (typeof node !== 'object' || node === null) return;
  delete commented.comment;
  delete commented.commentBefore;
  delete commented.spaceBefore;
  if (isCollection(node)) node.flow = true;
}

export const endings: Way = {
  name: 'line endings',
  same: true,
  apply: (sound, chance) => {
    const file = anyFile(sound, chance);
    return { ...sound.files, [file]: sound.files[file]!.replaceAll('\n', '\r\n') };
  },
};

/** Some of what the model says itself, said in a new file that it starts from. */
export const base: Way = {
  name: 'moved to a base',
  same: true,
  apply: (sound, chance) => {
    const file = sound.layers[0]!;
    const document = parseDocument(sound.files[file]!);
    const map = document.contents as unknown as YAMLMap<{ value: string }>;
    const stays = ['model', 'title', 'revision', 'based-on', 'units'];
    const moved = map.items.filter(({ key }) => !stays.includes(key.value) && chance.whole(2) === 0);
    if (moved.length === 0 || moved.some((pair) => hasRemove(pair))) return undefined;
    map.items = map.items.filter((pair) => !moved.includes(pair));
    const below = parseDocument(sound.files[file]!);
    const own = below.contents as unknown as typeof map;
    const names = moved.map(({ key }) => key.value);
    own.items = own.items.filter(({ key }) => ['based-on', 'units', ...names].includes(key.value));
    document.set('based-on', 'base/half');
    return { ...sound.files, [file]: written(document), 'models/base/half.yaml': written(below) };
  },
};

const hasRemove = ({ value }: Pair): boolean => isMap(value) && value.has('remove');

function rewritten(
  sound: Sound,
  chance: Seeded,
  change: (document: Document, file: string) => void,
): Record<string, string> {
  const file = anyFile(sound, chance);
  const document = parseDocument(sound.files[file]!);
  change(document, file);
  return { ...sound.files, [file]: written(document) };
}

/** Long outlines stay on one line; numbers stay as they were typed. */
function written(document: Document): string {
  visit(document, {
    Scalar(_, scalar) {
      if (typeof scalar.value === 'number' && scalar.source !== undefined) scalar.value = scalar.source;
    },
  });
  return document.toString({ lineWidth: 0 });
}
