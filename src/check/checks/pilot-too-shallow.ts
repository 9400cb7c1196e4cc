/** A pilot is as deep as its screw goes, at worst. */
import type { Check } from '../check.ts';
import { look } from '../check.ts';
import { say } from '../say.ts';
import { bore, cuts, gap, line, ring, screw, section, slab } from '../sketch.ts';
import { screwedHoles } from '../screws.ts';

const check: Check = {
  id: 'pilot-too-shallow',
  stage: 'derived',
  severity: 'caution',
  why: 'The point meets wood that is not drilled: the head stands proud, or the screw is driven until something gives.',
  mend: 'Drill the pilot deeper, or use a shorter screw.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'length: 7/16 in, head: 6.6, holds: 2.0',
    fails: 'length: 5/8 in, head: 6.6, holds: 2.0',
  },
  sketch: section(
    slab(),
    cuts(bore({ from: [30, 0], to: [30, 8], width: 3 })),
    screw([30, -5], [30, 8.6]),
    ring(30, 8.4, 3, 'lower-right'),
    gap(38, -5, 0, 'end'),
    line('M 34 -5 H 39.4', 'thin'),
  ),
  run: (bench) =>
    screwedHoles(bench).flatMap(({ id, hole, name, length }) => {
      const seen = look(bench.facts, (use) => ({ beyond: use.fact(`screw.${id}.beyond`), depth: use(hole.depth) }));
      const most = seen && (seen.beyond.high ?? seen.beyond.value);
      if (!seen || most === undefined || most <= 0) return [];
      return [
        {
          at: hole.depth.id,
          what: `The point of ${name} may go ${say(seen.depth, most)} deeper than its pilot ${id}.`,
          mend: `Drill it ${say(seen.depth, seen.depth.value + most)} deep if the wood is thick enough, or use a shorter screw.`,
          against: [{ at: length, text: 'length of the screw' }],
          hangsOn: [`screw.${id}.beyond`],
        },
      ];
    }),
};
export default check;
