/** What is done again is done in the order of the route. */
import { namesOf, present, readable } from '../../facts/row.ts';
import type { Check, Fault } from '../check.ts';
import { look } from '../check.ts';

const check: Check = {
  id: 'rework-against-route',
  stage: 'spec',
  severity: 'error',
  why: 'Whoever mends a piece goes by this list: glued before it is jointed, or sized before it is planed, it is out once more.',
  mend: 'Write what is done again in the order in which the stations stand in the route.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'then: [sizing]',
    fails: 'then: [lamination, sizing]',
  },
  run: ({ subject: { plant }, facts }) => {
    const route = look(facts, (use) => readable(present(plant.route) ?? []).map((leaf) => use(leaf))) ?? [];
    return namesOf(present(plant.reworks)).flatMap((id): Fault[] => {
      const then = readable(present(plant.reworks?.[id]?.then) ?? []);
      const names = look(facts, (use) => then.map((leaf) => use(leaf))) ?? [];
      const at = names.findIndex((name, i) => {
        const before = names.slice(0, i).filter((one) => route.includes(one));
        return route.includes(name) && before.some((one) => route.indexOf(one) > route.indexOf(name));
      });
      if (at < 0) return [];
      const inOrder = names.toSorted((a, b) => route.indexOf(a) - route.indexOf(b));
      return [
        {
          at: then[at]!.id,
          what: `The rework ${id} does ${names[at]!} after ${names[at - 1]!}, and the route passes them the other way round.`,
          mend: `Write [${inOrder.join(', ')}].`,
          against: [],
        },
      ];
    });
  },
};
export default check;
