/** What a YAML file says, with the place of every key and value: the one form all reading works on. */
import type { Place } from '../findings/finding.ts';

/** Unit of bare lengths in the file a node was written in. */
export type FileUnits = 'mm' | 'in';

export interface Scalar {
  readonly kind: 'scalar';
  readonly place: Place;
  readonly units: FileUnits;
  /** As written, quotes and escapes resolved; numbers keep their digits. Empty where nothing was written. */
  readonly text: string;
}

export interface Entry {
  readonly key: Place;
  readonly value: Node;
}

export interface MapNode {
  readonly kind: 'map';
  readonly place: Place;
  readonly entries: ReadonlyMap<string, Entry>;
}

export interface ListNode {
  readonly kind: 'list';
  readonly place: Place;
  readonly items: readonly Node[];
}

export type Node = Scalar | MapNode | ListNode;

/** The entry of a map, or undefined where the node is no map or has no such key. */
export const entryOf = (node: Node | undefined, key: string): Entry | undefined =>
  node?.kind === 'map' ? node.entries.get(key) : undefined;

/** The value at a path of keys. */
export function valueAt(node: Node | undefined, ...keys: readonly string[]): Node | undefined {
  return keys.reduce<Node | undefined>((at, key) => entryOf(at, key)?.value, node);
}

export const textAt = (node: Node | undefined, ...keys: readonly string[]): string | undefined => {
  const found = valueAt(node, ...keys);
  return found?.kind === 'scalar' ? found.text : undefined;
};

/** Keys of the map at a path. */
export function keysAt(node: Node | undefined, ...keys: readonly string[]): readonly string[] {
  const found = valueAt(node, ...keys);
  return found?.kind === 'map' ? [...found.entries.keys()] : [];
}

/** As plain data, scalars as their text: what the schema validates. Keys stay own properties, whatever their name. */
export function plain(node: Node): unknown {
  if (node.kind === 'scalar') return node.text;
  if (node.kind === 'list') return node.items.map(plain);
  const out: Record<string, unknown> = Object.create(null);
  for (const [key, entry] of node.entries) out[key] = plain(entry.value);
  return out;
}
