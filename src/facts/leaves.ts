/** All leaves of a tree, in the order they were written. */
import { Leaf, holeId } from './leaf.ts';

export function leavesOf(tree: unknown): readonly Leaf<unknown>[] {
  if (tree instanceof Leaf) return [tree as Leaf<unknown>];
  if (typeof tree !== 'object' || tree === null || holeId(tree) !== undefined) return [];
  return Object.values(tree).flatMap(leavesOf);
}
