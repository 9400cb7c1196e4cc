/** Numbers of which the schema says in what range they are meant. */
import type { Leaf } from '../facts/leaf.ts';
import { leavesOf } from '../facts/leaves.ts';
import type { Subject } from '../facts/subject.ts';
import type { Kind, Quantity } from '../units/quantity.ts';
import { unitById } from '../units/unit.ts';

export const plausibles = ({ spec, plant }: Subject): readonly Leaf<Quantity>[] =>
  [...leavesOf(spec), ...leavesOf(plant)].filter((leaf) => leaf.asked.plausible !== undefined) as Leaf<Quantity>[];

/** Units people mix up, by kind. */
const MIXED_UP: Readonly<Partial<Record<Kind, readonly string[]>>> = {
  length: ['mm', 'in'],
  pressure: ['psi', 'kPa', 'bar', 'MPa'],
};

/** What it would be with the same digits in another unit, if that is where it belongs; in base units. */
export function inOtherUnit(
  q: Quantity,
  { low, high }: { low: number; high: number },
): { unit: string; value: number } | undefined {
  if (q.value >= low && q.value <= high) return undefined;
  const digits = unitById(q.unit).fromBase(q.value);
  return (MIXED_UP[q.kind] ?? [])
    .filter((unit) => unit !== q.unit)
    .map((unit) => ({ unit, value: unitById(unit).toBase(digits) }))
    .find(({ value }) => value >= low && value <= high);
}
