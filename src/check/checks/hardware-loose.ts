/** A part has no more room in its cavity than its row allows: nothing rattles, and its ring still holds it. */
import { against, fittedParts, highOf, sizesOf } from '../hardware.ts';
import type { Check } from '../check.ts';
import { say } from '../say.ts';
import { field, gap, plan, pocket, polygon, shape } from '../sketch.ts';

const check: Check = {
  id: 'hardware-loose',
  stage: 'derived',
  severity: 'error',
  why: 'The part lies askew or rattles, and somebody packs it with what is at hand.',
  mend: 'Make the cavity smaller, or fit the part it was made for.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'body: { length: 35, width: 85, corner: 3 }',
    fails: 'body: { length: 20, width: 85, corner: 3 }',
  },
  sketch: plan(
    field(),
    pocket(-20, -9, 20, 10, 3),
    shape(polygon([-13, -6], [14, 0], [12.4, 7], [-14.6, 1]), 'metal', 'edge'),
    gap(0, -9, -3.1),
  ),
  run: (bench) =>
    fittedParts(bench).flatMap(({ fitted, id, name, row }) => {
      const room = `fitted.${id}.most-room` as const;
      const seen = against(bench, room, row['most-room']);
      if (!seen || highOf(seen.found) <= seen.asked.value) return [];
      const { found, asked, at } = seen;
      return [
        {
          at: fitted.hardware.id,
          what: `${name} has ${say(asked, highOf(found))} of room on its widest side in ${fitted.id}; it may have ${say(asked, asked.value)} at most.`,
          mend: `Make the cavity ${say(asked, highOf(found) - asked.value)} smaller on that side, or fit a larger part.`,
          against: [
            { at: fitted.place.id, text: `where ${fitted.id} lies` },
            { at, text: `the room ${name} may have` },
            ...sizesOf(row.body, name),
          ],
          hangsOn: [room],
        },
      ];
    }),
};
export default check;
