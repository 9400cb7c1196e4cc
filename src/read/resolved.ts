/**
 * A spec with all it is based on merged in, as plain data that means the same in any file: every length with its unit, as its
 * own file may have had another.
 */
import { Leaf } from '../facts/leaf.ts';
import { leavesOf } from '../facts/leaves.ts';
import { parseQuantity } from '../units/parse.ts';
import type { Node, Scalar } from './node.ts';

/** `spec`: the typed tree of the same node; it knows which of its texts are lengths. */
export function resolvedData(root: Node, spec: unknown): Record<string, unknown> {
  const lengths = new Set(
    leavesOf(spec)
      .filter((leaf) => isLength(Leaf.open(leaf)))
      .map(({ id }) => id),
  );
  const { 'based-on': _base, ...data } = plain(root, '', lengths) as Record<string, unknown>;
  return data;
}

const isLength = (value: unknown): boolean =>
  typeof value === 'object' && value !== null && (value as { kind?: unknown }).kind === 'length';

function plain(node: Node, id: string, lengths: ReadonlySet<string>): unknown {
  if (node.kind === 'scalar') return lengths.has(id) ? withUnit(node) : node.text;
  if (node.kind === 'list') {
    return node.items.map((item) => plain(item, `${id}[${item.kind === 'scalar' ? item.text : ''}]`, lengths));
  }
  const entries = [...node.entries].map(([key, entry]) => {
    // What is laid over for the left hand is of the same kind as what it lies over.
    const name = `${id === '' ? '' : `${id}.`}${key}`.replace(/^handed\.left\.?/, '');
    return [key, plain(entry.value, name, lengths)] as const;
  });
  return Object.fromEntries(entries);
}

const withUnit = ({ text, units }: Scalar): string =>
  parseQuantity(text, { kind: 'length' }).ok ? text : `${text} ${units}`;
