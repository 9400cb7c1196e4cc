/** All leaves of a tree, in the order they were written. */
import { Leaf, holeId } from './leaf.ts';

export function leavesOf(tree: unknown): readonly Leaf<unknown>[] {
  const leaves: Leaf<unknown>[] = [];
  addLeaves(tree, leaves);
  return leaves;
}

function addLeaves(tree: unknown, leaves: Leaf<unknown>[]): void {
  if (tree instanceof Leaf) leaves.push(tree as Leaf<unknown>);
  else if (typeof tree === 'object' && tree !== null && holeId(tree) === undefined) {
    for (const part of Object.values(tree)) addLeaves(part, leaves);
  }
}
