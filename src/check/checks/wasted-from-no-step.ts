/** The step from which wood is wasted under an opaque finish is one of its scale. */
import { namesOf, present } from '../../facts/row.ts';
import { offer } from '../../findings/nearest.ts';
import type { Check, Fault } from '../check.ts';
import { look } from '../check.ts';

const check: Check = {
  id: 'wasted-from-no-step',
  stage: 'spec',
  severity: 'error',
  why: 'No piece has that grade, so no piece is too good for a finish that hides it: figured wood goes under black.',
  mend: 'Name a step of the scale.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'wasted-from: fine',
    fails: 'wasted-from: flamed',
  },
  run: ({ subject: { plant }, facts }) =>
    namesOf(present(plant.grades)).flatMap((scale): Fault[] => {
      const { steps, 'wasted-from': wasted } = plant.grades![scale]!;
      const seen = wasted && look(facts, (use) => ({ from: use(wasted), steps: steps.map((step) => use(step)) }));
      if (!seen || seen.steps.includes(seen.from)) return [];
      const what = `"${seen.from}" is not a step of the scale ${scale}.`;
      return [{ at: wasted.id, what, mend: offer(seen.from, seen.steps), against: [] }];
    }),
};
export default check;
