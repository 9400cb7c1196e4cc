/** No interlock waits for more vacuum than the air of the place has to give. */
import { row, wanted } from '../../facts/row.ts';
import type { Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { sayAs } from '../say.ts';
import { heldByVacuum } from '../zones.ts';

const check: Check = {
  id: 'vacuum-over-ambient',
  stage: 'derived',
  severity: 'error',
  why: 'What holds the body is the air outside. No pump pulls more than that: a hold computed with more is not there.',
  mend: 'Give what the interlock really waits for, as a difference to the air outside; mind the unit.',
  example: { file: 'models/plant/plant.yaml', passes: 'interlock: 70 kPa', fails: 'interlock: 104 kPa' },
  run: ({ subject, facts, ...bench }) =>
    heldByVacuum({ subject, facts, ...bench })
      .slice(0, 1)
      .flatMap(({ setup }): Fault[] => {
        const seen = look(facts, (use) => {
          const machine = use(subject.spec.setups[setup]!.machine);
          const { interlock } = wanted(row(subject.plant.machines, machine, 'plant.machines').vacuum, 'vacuum');
          return { at: interlock.id, interlock: use(interlock), air: use.fact('hold.air') };
        });
        if (!seen || (seen.interlock.high ?? seen.interlock.value) < seen.air.value) return [];
        return [
          {
            at: seen.at,
            what: `The interlock waits for a vacuum of ${sayAs(seen.interlock, seen.interlock.high ?? seen.interlock.value)}. The air outside may press with no more than ${sayAs(seen.air, seen.air.value)}.`,
            mend: `Give what it really waits for: less than ${sayAs(seen.air, seen.air.value)}.`,
            against: [{ at: 'hold.air', text: 'the air of the place' }],
            hangsOn: ['hold.air'],
          },
        ];
      }),
};
export default check;
