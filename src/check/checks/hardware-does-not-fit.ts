/** A part that lies in a cavity goes in, with the room its row asks for all round: corners of the cutter and of the part too. */
import type { Bench, Check, Fault } from '../check.ts';
import type { Part } from '../hardware.ts';
import { against, fittedParts, lowOf, sizesOf } from '../hardware.ts';
import { say } from '../say.ts';
import { field, line, plan, pocket, rect, ring, shape } from '../sketch.ts';

const check: Check = {
  id: 'hardware-does-not-fit',
  stage: 'derived',
  severity: 'error',
  why: 'The part does not go in, and a painted body is chiselled out by hand.',
  mend: 'Make the cavity larger or its corners tighter, or fit a smaller part.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'body: { length: 35, width: 85, corner: 3 }',
    fails: 'body: { length: 35, width: 87, corner: 3 }',
  },
  sketch: plan(
    field(),
    pocket(-19, -10, 19, 10, 7),
    shape(rect(-18, -9, 18, 9, 1), 'metal', 'edge'),
    line(rect(-19, -10, 19, 10, 7), 'thin'),
    ring(17, -8, 3.2),
  ),
  run: (bench) => fittedParts(bench).flatMap((part) => faults(bench, part)),
};
export default check;

function faults(bench: Bench, { fitted, id, name, row }: Part): Fault[] {
  if (fitted.kind === 'hole') return [];
  const room = `fitted.${id}.room` as const;
  const seen = against(bench, room, row.room);
  if (!seen || lowOf(seen.found) >= seen.asked.value) return [];
  const { found, asked, at } = seen;
  const short =
    lowOf(found) < 0
      ? `reaches ${say(asked, -lowOf(found))} into the wall of ${fitted.id}`
      : `has ${say(asked, lowOf(found))} of room in ${fitted.id}`;
  return [
    {
      at: fitted.hardware.id,
      what: `${name} ${short} at worst. It needs ${say(asked, asked.value)} all round.`,
      mend: `Make the cavity ${say(asked, asked.value - lowOf(found))} larger on that side, or fit a smaller part.`,
      against: [
        { at: fitted.place.id, text: `where ${fitted.id} lies` },
        { at, text: `the room ${name} needs` },
        ...sizesOf(row.body, name),
      ],
      hangsOn: [room],
    },
  ];
}
