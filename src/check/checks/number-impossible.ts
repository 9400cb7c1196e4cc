/** A number outside of what there can be at all: more wood out than in, a shift longer than a day. */
import { leavesOf } from '../../facts/leaves.ts';
import type { Leaf } from '../../facts/leaf.ts';
import { formatQuantity } from '../../units/format.ts';
import type { Quantity } from '../../units/quantity.ts';
import type { Check } from '../check.ts';

const check: Check = {
  id: 'number-impossible',
  stage: 'spec',
  severity: 'error',
  why: 'There is no such thing: whatever is ordered, timed or cut by it comes out wrong.',
  mend: 'Look at the digits and the unit once more.',
  example: { file: 'models/plant/plant.yaml', passes: 'yield: 62 %', fails: 'yield: 162 %' },
  run: ({ subject: { spec, plant }, facts }) =>
    [...leavesOf(spec), ...leavesOf(plant)].flatMap((leaf) => {
      const { possible } = leaf.asked;
      if (!possible) return [];
      const q = facts.peek(leaf as Leaf<Quantity>);
      const [low, high] = [q.low ?? q.value, q.high ?? q.value];
      if (low >= possible.low && high <= possible.high) return [];
      facts.note(leaf);
      return [
        {
          at: leaf.id,
          what: `${formatQuantity(q)} cannot be: it must lie between ${possible.text.replace(' .. ', ' and ')}.`,
          mend: 'Look at the digits and the unit once more.',
          against: [],
        },
      ];
    }),
};
export default check;
