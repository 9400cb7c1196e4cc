/** A ring or flange covers the edge of its cavity or hole all round. */
import { against, fittedParts, lowOf, sizesOf } from '../hardware.ts';
import type { Check } from '../check.ts';
import { say } from '../say.ts';
import { field, plan, pocket, rect, ring, shape } from '../sketch.ts';

const check: Check = {
  id: 'pocket-shows-round-ring',
  stage: 'derived',
  severity: 'error',
  why: 'The edge of the cavity shows beside the ring, and its screws stand in nothing.',
  mend: 'Make the cavity smaller, or fit a part with a larger ring.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'flange: { length: 46, width: 92, corner: 4 }',
    fails: 'flange: { length: 38, width: 92, corner: 4 }',
  },
  sketch: plan(
    field(),
    pocket(-20, -7, 20, 7, 2),
    shape(rect(-16, -11, 16, 11, 2), 'metal', 'edge'),
    shape(rect(-11, -4.5, 11, 4.5, 1), 'air', 'edge'),
    ring(18, 0, 3.6),
  ),
  run: (bench) =>
    fittedParts(bench).flatMap(({ fitted, id, name, row }) => {
      const lip = `fitted.${id}.lip` as const;
      const seen = against(bench, lip, row.lip);
      if (!seen || lowOf(seen.found) >= seen.asked.value) return [];
      const { found, asked, at } = seen;
      const over = lowOf(found);
      // What reads as nothing is said as that.
      const short =
        Math.abs(over) < 5_000
          ? `only just reaches the edge of ${fitted.id}`
          : over < 0
            ? `leaves ${say(asked, -over)} of ${fitted.id} open at its edge`
            : `reaches only ${say(asked, over)} past the edge of ${fitted.id}`;
      return [
        {
          at: fitted.hardware.id,
          what: `The flange of ${name} ${short}. It is to reach ${say(asked, asked.value)} past it all round.`,
          mend: `Make the cavity ${say(asked, asked.value - lowOf(found))} smaller there, or fit a larger ring.`,
          against: [
            { at: fitted.place.id, text: `where ${fitted.id} lies` },
            { at, text: 'how far the flange is to reach past the edge' },
            ...sizesOf(row.flange, `the flange of ${name}`),
          ],
          hangsOn: [lip],
        },
      ];
    }),
};
export default check;
