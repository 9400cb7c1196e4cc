/** A number that can be meant only in the other unit is asked about. */
import type { Leaf } from '../../facts/leaf.ts';
import { formatQuantity, withUnit, formatNumber } from '../../units/format.ts';
import type { Quantity } from '../../units/quantity.ts';
import type { Facts } from '../../facts/facts.ts';
import type { Check, Fault } from '../check.ts';
import { inOtherUnit, plausibles } from '../plausible.ts';

const check: Check = {
  id: 'other-unit',
  stage: 'spec',
  severity: 'error',
  why: 'An inch taken for a millimetre is off twenty-five times, and looks like any other number on a card.',
  mend: 'Write the unit after the number.',
  example: { file: 'models/base/bolt-on.yaml', passes: 'scale: 622', fails: 'scale: 24.488' },
  run: ({ subject, facts }) => plausibles(subject).flatMap((leaf) => fault(facts, leaf)),
};
export default check;

function fault(facts: Facts, leaf: Leaf<Quantity>): Fault[] {
  const q = facts.peek(leaf);
  const other = inOtherUnit(q, leaf.asked.plausible!);
  if (!other) return [];
  facts.note(leaf);
  const plain = q.kind === 'length' ? 'mm' : q.unit;
  const written = withUnit(formatNumber(q.value, q.unit, q.decimals), other.unit);
  return [
    {
      at: leaf.id,
      what: `Is ${formatQuantity(q)} meant? ${written} would be ${withUnit(formatNumber(other.value, plain, 2), plain)}.`,
      mend: `If ${written} is meant, write the unit after the number.`,
      against: [],
    },
  ];
}
