/** Rows of the plant that are out of use. */
import type { Facts } from '../facts/facts.ts';
import { Leaf } from '../facts/leaf.ts';
import type { Subject } from '../facts/subject.ts';

type Tables = Readonly<Record<string, Readonly<Record<string, { readonly retired?: unknown }>> | undefined>>;

/** The day from which on the row is retired that a name stands for; undefined of a row in use, and of what is no name. */
export function retiredOf({ plant }: Subject, facts: Facts, leaf: Leaf<unknown>): Leaf<string> | undefined {
  const table = leaf.asked.refers;
  if (table === undefined || !table.startsWith('plant.')) return undefined;
  const rows = (plant as unknown as Tables)[table.slice('plant.'.length)];
  const name = String(facts.peek(leaf));
  const retired = rows && Object.hasOwn(rows, name) ? rows[name]!.retired : undefined;
  return retired instanceof Leaf ? (retired as Leaf<string>) : undefined;
}
