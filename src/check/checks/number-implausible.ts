/** A number far from anything made here is asked about. */
import { formatQuantity } from '../../units/format.ts';
import type { Check } from '../check.ts';
import { inOtherUnit, plausibles } from '../plausible.ts';

const check: Check = {
  id: 'number-implausible',
  stage: 'spec',
  severity: 'caution',
  why: 'A slipped digit reads like any other number until a cutter follows it.',
  mend: 'Look at the digits and the unit once more; if it is meant, permit it with a reason.',
  example: { file: 'models/tarn.yaml', passes: 'travel: 8', fails: 'travel: 80' },
  run: ({ subject, facts }) =>
    plausibles(subject).flatMap((leaf) => {
      const q = facts.peek(leaf);
      const { low, high, text } = leaf.asked.plausible!;
      // What fits in the other unit is asked about by the check of that.
      if ((q.value >= low && q.value <= high) || inOtherUnit(q, { low, high })) return [];
      facts.note(leaf);
      return [
        {
          at: leaf.id,
          what: `${formatQuantity(q)} is far from what is made here: ${text.replace(' .. ', ' to ')}.`,
          mend: 'Look at the digits and the unit once more; if it is meant, permit it with a reason.',
          against: [],
        },
      ];
    }),
};
export default check;
