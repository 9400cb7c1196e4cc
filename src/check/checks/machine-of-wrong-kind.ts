/** Each station on the way of a body has a machine that can do its work. */
import { present, row } from '../../facts/row.ts';
import type { Check, Fault } from '../check.ts';
import { look } from '../check.ts';

const check: Check = {
  id: 'machine-of-wrong-kind',
  stage: 'spec',
  severity: 'error',
  why: 'The card would name a machine that cannot do the work, and the errors and limits of another would be reckoned with.',
  mend: 'Name the machine that does the work of this station.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'title: Sizing\n    machine: wide-belt',
    fails: 'title: Sizing\n    machine: spreader',
  },
  run: ({ subject: { plant }, facts, flow }) =>
    flow
      .filter(({ passes, machines }) => passes && machines.length > 0)
      .flatMap(({ id, machines }): Fault[] => {
        const named = present(present(plant.stations)?.[id])?.machine;
        const seen =
          named &&
          look(facts, (use) => {
            const machine = row(plant.machines, use(named), 'plant.machines');
            return { name: use(named), kind: use(machine.kind), row: machine.kind.id };
          });
        if (!seen || machines.includes(seen.kind)) return [];
        const able = machines.join(' or ');
        return [
          {
            at: named.id,
            what: `${id} is to be done on ${seen.name}, a machine of the kind ${seen.kind}. It takes one of the kind ${able}.`,
            mend: `Name a machine of the kind ${able}.`,
            against: [{ at: seen.row, text: 'what kind it is' }],
            explains: [`plant.machines.${seen.name}`],
          },
        ];
      }),
};
export default check;
