/** Between the end of what hangs behind a panel and the cover there is the room its row asks for. */
import { against, fittedParts, lowOf } from '../hardware.ts';
import type { Check } from '../check.ts';
import { say, sayCauses } from '../say.ts';

const check: Check = {
  id: 'hardware-hits-cover',
  stage: 'derived',
  severity: 'error',
  why: 'The cover does not close, or presses on the terminals and shorts them.',
  mend: 'Cut the cavity deeper into the top or the seat less deep, or fit a flatter part.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'reach: 22',
    fails: 'reach: 42',
  },
  run: (bench) =>
    fittedParts(bench).flatMap(({ fitted, id, name, row }) => {
      const room = `fitted.${id}.to-cover` as const;
      const seen = against(bench, room, row['cover-clearance']);
      if (!seen || lowOf(seen.found) >= seen.asked.value) return [];
      const { found, asked, at } = seen;
      return [
        {
          at: fitted.hardware.id,
          what: `Between ${name} in ${fitted.id} and the cover are ${say(asked, found.value)}, less ${sayCauses(found, found.causes ?? [])}; it needs ${say(asked, asked.value)} at worst.`,
          mend: `Make the cavity ${say(asked, asked.value - lowOf(found))} deeper, or fit a flatter part.`,
          against: [
            { at, text: 'the room it needs' },
            ...(row.reach ? [{ at: row.reach.id, text: 'how far it reaches in' }] : []),
          ],
          hangsOn: [room],
        },
      ];
    }),
};
export default check;
