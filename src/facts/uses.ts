/** Where a row of the plant is used: lines that name it, and facts that came from it. */
import type { Facts } from './facts.ts';
import { Leaf } from './leaf.ts';
import { leavesOf } from './leaves.ts';

/** Leaves of a tree that name this row. `table` as `plant.cutters`. */
export const namings = (tree: unknown, table: string, name: string): readonly Leaf<unknown>[] =>
  leavesOf(tree).filter((leaf) => leaf.asked.refers === table && leaf.text === name);

/** Whether any of these facts came from the row, by whatever way: through what names it, or its own numbers. */
export function cameFrom(facts: Facts, ids: Iterable<string>, table: string, name: string): boolean {
  const row = `${table}.${name}`;
  const seen = new Set<string>();
  const visit = (id: string): boolean => {
    if (seen.has(id)) return false;
    seen.add(id);
    if (id === row || id.startsWith(`${row}.`)) return true;
    return facts.fact(id)?.inputs.some(visit) ?? false;
  };
  return [...ids].some(visit);
}
