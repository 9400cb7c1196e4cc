/** Who lets a caution stand is somebody the plant names. */
import { namesOf, present, readable } from '../../facts/row.ts';
import { offer } from '../../findings/nearest.ts';
import type { Check, Fault } from '../check.ts';
import { look } from '../check.ts';

const check: Check = {
  id: 'permit-of-nobody',
  stage: 'spec',
  severity: 'error',
  why: 'A permit prints on every card with a name to it: who asks about it has to find somebody who answers.',
  mend: 'Have it permitted by one of the people whom the plant names for that.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'notes: { sizing: Sand the glue faces last. }',
    fails:
      'notes: { sizing: Sand the glue faces last. }\npermits: { numeral-in-a-note: { reason: trial, name: N. Body, until: 2099-01-01 } }',
    beside: {
      file: 'models/plant/plant.yaml',
      find: 'plant: { name: Sample Works,',
      replace: 'plant: { people: [T. Vael], name: Sample Works,',
    },
  },
  run: ({ subject: { spec, plant }, facts }) => {
    const people = look(facts, (use) => readable(present(present(plant.plant)?.people) ?? []).map((leaf) => use(leaf)));
    if (!people || people.length === 0) return [];
    return namesOf(spec.permits).flatMap((id): Fault[] => {
      const { name: leaf } = spec.permits![id]!;
      const name = look(facts, (use) => use(leaf));
      if (name === undefined || people.includes(name)) return [];
      const what = `"${name}" lets a caution stand, and is not one of the people the plant names for that.`;
      return [{ at: leaf.id, what, mend: offer(name, people), against: [] }];
    });
  },
};
export default check;
