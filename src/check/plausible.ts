/** Numbers of which the schema says in what range they are meant. */
import type { Leaf } from '../facts/leaf.ts';
import { leavesOf } from '../facts/leaves.ts';
import { namesOf, present } from '../facts/row.ts';
import type { Subject } from '../facts/subject.ts';
import type { Quantity } from '../units/quantity.ts';

/** Those of a model, and of the tacks of the plant that it uses. */
export const plausiblesOf = (subject: Subject): readonly Leaf<Quantity>[] => [
  ...plausibles(subject.spec),
  ...plausibles(tacksOf(subject)),
];

/** Rows of the tacks that the model names, or its line. */
function tacksOf({ spec, plant }: Subject): object {
  const own = namesOf(spec.tacks).map((id) => present(present(spec.tacks![id])?.kind));
  const line = present(present(plant.lines)?.[present(spec.line)?.text ?? '']);
  const used = [...own, present(present(line?.tacks)?.kind)].flatMap((leaf) => (leaf ? [leaf.text] : []));
  return Object.fromEntries(used.map((kind) => [kind, present(plant.tacks)?.[kind]]));
}

const plausibles = (tree: unknown): readonly Leaf<Quantity>[] =>
  leavesOf(tree).filter((leaf) => leaf.asked.plausible !== undefined) as Leaf<Quantity>[];

/** What it would be with the same digits in the other unit, if that is where it belongs; lengths in nanometres. */
export function inOtherUnit(
  q: Quantity,
  { low, high }: { low: number; high: number },
): { unit: 'mm' | 'in'; value: number } | undefined {
  if (q.kind !== 'length' || (q.value >= low && q.value <= high)) return undefined;
  const unit = q.value < low ? 'in' : 'mm';
  const value = unit === 'in' ? q.value * 25.4 : q.value / 25.4;
  return value >= low && value <= high ? { unit, value } : undefined;
}
