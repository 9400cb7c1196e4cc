/** Thicker wood rests at least as long in the store as thinner. */
import { namesOf, present } from '../../facts/row.ts';
import type { Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { say, sayAs } from '../say.ts';

const check: Check = {
  id: 'rest-out-of-order',
  stage: 'spec',
  severity: 'error',
  why: 'The moisture in the middle of a thick board takes longer to settle: released too soon, it moves in the press and on the router.',
  mend: 'Look at the unit: days, not hours. Let thicker wood rest at least as long as thinner.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'rest: 28 d',
    fails: 'rest: 28 h',
  },
  run: ({ subject: { plant }, facts }) =>
    namesOf(present(plant.machines)).flatMap((machine) => {
      const days = present(plant.machines![machine]!.days);
      const rows = namesOf(days)
        .flatMap((id) => {
          const { 'up-to': upTo, rest } = days![id]!;
          const seen = look(facts, (use) => ({ upTo: use(upTo), rest: use(rest) }));
          return seen ? [{ ...seen, at: rest.id }] : [];
        })
        .toSorted((a, b) => a.upTo.value - b.upTo.value);
      return rows.flatMap((row, i): Fault[] => {
        const before = rows.slice(0, i).find((one) => one.rest.value > row.rest.value);
        if (!before) return [];
        return [
          {
            at: row.at,
            what: `Wood up to ${say(row.upTo, row.upTo.value)} thick rests ${sayAs(row.rest, row.rest.value)}, and thinner wood, up to ${say(before.upTo, before.upTo.value)}, rests ${sayAs(before.rest, before.rest.value)}.`,
            mend: `Let it rest ${sayAs(before.rest, before.rest.value)} or longer.`,
            against: [{ at: before.at, text: 'how long thinner wood rests' }],
          },
        ];
      });
    }),
};
export default check;
