/** A hole or cavity is deep enough for its part, at the worst and once the top is sanded. */
import { against, fittedParts, lowOf } from '../hardware.ts';
import type { Check } from '../check.ts';
import { say, sayCauses } from '../say.ts';

const check: Check = {
  id: 'too-shallow-for-hardware',
  stage: 'derived',
  severity: 'error',
  why: 'The part stands up: a ring on stilts, a bushing that is not flush, a cover that does not close.',
  mend: 'Cut it deeper, or fit a shorter part.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'depth: 12.0..18.0',
    fails: 'depth: 30.0..40.0',
  },
  run: (bench) =>
    fittedParts(bench).flatMap(({ fitted, id, name, row }) => {
      const depth = `fitted.${id}.depth.least` as const;
      const seen = against(bench, depth, row.depth);
      if (!seen || lowOf(seen.found) >= seen.asked.low!) return [];
      const { found, asked, at } = seen;
      return [
        {
          at: fitted.hardware.id,
          what: `The depth ${name} finds in ${fitted.id} is as little as ${say(asked, lowOf(found))}: ${say(asked, found.value)}, and off by ${sayCauses(found, found.causes ?? [])}. It needs at least ${say(asked, asked.low!)}.`,
          mend: `Cut ${fitted.id} ${say(asked, asked.low! - lowOf(found))} deeper, or fit another part.`,
          against: [
            { at, text: 'the depth it needs' },
            { at: fitted.place.id, text: 'where it lies' },
          ],
          hangsOn: [depth],
        },
      ];
    }),
};
export default check;
