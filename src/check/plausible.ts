/** Numbers of which the schema says in what range they are meant. */
import type { Leaf } from '../facts/leaf.ts';
import { leavesOf } from '../facts/leaves.ts';
import type { Subject } from '../facts/subject.ts';
import type { Quantity } from '../units/quantity.ts';

export const plausibles = ({ spec, plant }: Subject): readonly Leaf<Quantity>[] =>
  [...leavesOf(spec), ...leavesOf(plant)].filter((leaf) => leaf.asked.plausible !== undefined) as Leaf<Quantity>[];

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
