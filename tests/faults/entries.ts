/** Every key with a value and every item of a list, in the files of a sound model, with the schema that holds for it. */
import type { Node, ParsedNode, YAMLMap, YAMLSeq } from 'yaml';
import { isMap, isScalar, isSeq, parseDocument } from 'yaml';
import type { Tree } from './merged.ts';
import { at, isTree, modelOf, plantFiles, treeAt } from './merged.ts';
import type { Schema } from './schema.ts';
import { childOf, requiredKeys, resolved, schemaOf } from './schema.ts';
import type { Sound } from './sound.ts';

export interface Entry {
  readonly file: string;
  readonly of: 'model' | 'plant';
  /** From the root of the file; items of a list by their number. */
  readonly path: readonly string[];
  readonly schema: Schema;
  /** A name of the user's own, or the number of an item. */
  readonly free: boolean;
  /** Needed by the schema, and said nowhere else. */
  readonly required: boolean;
  /** A file nearer to the model says it too: this one is not read. */
  readonly shadowed: boolean;
  /** A file farther from the model says it too, or the right hand does: without this one that one is read. */
  readonly backed: boolean;
  readonly left: boolean;
  /** Start and end in the text; of an item its value is its key. */
  readonly key: readonly [number, number];
  readonly value: readonly [number, number];
  /** As written, quotes left out; undefined of a map or list. */
  readonly scalar: string | undefined;
  readonly flow: boolean;
  /** Starts and ends of it and its neighbours in the map or list, in order. */
  readonly siblings: readonly (readonly [number, number])[];
  readonly nth: number;
  /** Where the map it stands in is named, and where that begins. */
  readonly parents: readonly number[];
}

interface Walk {
  readonly file: string;
  readonly of: 'model' | 'plant';
  readonly text: string;
  readonly root: Schema;
  /** The map or list as it is after merging. */
  readonly whole: Tree;
  readonly others: { readonly above: readonly Tree[]; readonly below: readonly Tree[] };
  readonly found: Entry[];
}

interface Here {
  readonly path: readonly string[];
  readonly schema: Schema;
  readonly parents: readonly number[];
  readonly left: boolean;
}

/** All entries of the model, of what it is based on, and of the plant. */
export function entriesOf(sound: Sound): Entry[] {
  const { files, layers, model: merged, plant: whole } = sound;
  const alone = layers.map((file) => modelOf(files, [file]));
  const model = layers.flatMap((file, i) =>
    walkFile(files[file]!, file, 'model', merged, {
      above: alone.slice(0, i),
      below: alone.slice(i + 1),
    }),
  );
  const plant = plantFiles(files).flatMap((file) =>
    walkFile(files[file]!, file, 'plant', whole, { above: [], below: [] }),
  );
  return [...model, ...plant];
}

function walkFile(text: string, file: string, of: Walk['of'], whole: Tree, others: Walk['others']): Entry[] {
  const root = schemaOf(of);
  const walk: Walk = { file, of, text, root, whole, others, found: [] };
  const { contents } = parseDocument(text);
  if (isMap(contents)) walkMap(contents, { path: [], schema: root, parents: [contents.range[0]], left: false }, walk);
  return walk.found;
}

function walkMap(map: YAMLMap, here: Here, walk: Walk): void {
  const pairs = map.items as unknown as readonly { readonly key: ParsedNode; readonly value: ParsedNode | null }[];
  const required = here.left ? [] : requiredKeys(here.schema, treeAt(walk.whole, here.path));
  const siblings = pairs.map(({ key, value }) => [startOf(key), endOf(value ?? key)] as const);
  pairs.forEach(({ key, value }, nth) => {
    const name = isScalar(key) ? String(key.value) : '';
    const child = name === 'remove' ? undefined : childOf(here.schema, name, walk.root);
    if (!child || value === null) return;
    // What is laid over for the left hand has the shape of a model.
    const left = here.left || here.path.at(-1) === 'handed';
    const schema = here.path.at(-1) === 'handed' ? walk.root : child.schema;
    const path = [...here.path, name];
    const needed = required.includes(name);
    const flow = map.flow === true;
    add({ path, schema, free: child.free, key, value, siblings, nth, flow, parents: here.parents, left, needed }, walk);
  });
}

function walkSeq(seq: YAMLSeq, here: Here, walk: Walk): void {
  const items = seq.items as ParsedNode[];
  const siblings = items.map((item) => [startOf(item), endOf(item)] as const);
  const schema = resolved(here.schema.items ?? {}, walk.root);
  items.forEach((value, nth) => {
    const path = [...here.path, String(nth)];
    const needed = items.length === 1;
    const { parents, left } = here;
    add(
      { path, schema, free: true, key: value, value, siblings, nth, flow: seq.flow === true, parents, left, needed },
      walk,
    );
  });
}

type Found = Pick<Entry, 'path' | 'schema' | 'free' | 'siblings' | 'nth' | 'flow' | 'parents' | 'left'> & {
  readonly key: Node;
  readonly value: Node;
  readonly needed: boolean;
};

function add({ key, value, needed, ...rest }: Found, walk: Walk): void {
  const { file, of } = walk;
  const { path, left, schema } = rest;
  const says = (tree: Tree): boolean => at(tree, path) !== undefined;
  // Bare numbers are in the units of the file they stand in, whatever other files say.
  const ownUnits = path[0] === 'units' && walk.others.below.length === 0;
  const shadowed = path[0] !== 'units' && walk.others.above.some(says);
  const backed = walk.others.below.some(says) || (left && at(walk.whole, path.slice(2)) !== undefined);
  const scalar = isScalar(value) ? String((value as { source?: string }).source ?? value.value) : undefined;
  const places = { key: [startOf(key), endOf(key)] as const, value: [startOf(value), endOf(value)] as const };
  const required = (needed && !shadowed && !backed) || ownUnits;
  walk.found.push({ ...rest, file, of, shadowed, backed, required, scalar, ...places });
  const here = { path, schema, parents: [startOf(key), startOf(value)], left };
  if (isMap(value)) walkMap(value, here, walk);
  if (isSeq(value)) walkSeq(value, here, walk);
}

const startOf = (node: Node): number => node.range![0];
const endOf = (node: Node): number => node.range![1];

/** Path as text, as ids and tables write it. */
export const dotted = ({ path }: Entry): string => path.join('.');

export const isRow = ({ of, path, schema }: Entry): boolean =>
  of === 'plant' && path.length === 2 && isTree(schema.properties);
