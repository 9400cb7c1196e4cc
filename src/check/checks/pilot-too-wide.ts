/** A pilot leaves the thread of its screw wood to hold in: no wider than the lead hole its wood may have. */
import type { Check } from '../check.ts';
import { look } from '../check.ts';
import { say } from '../say.ts';
import { bore, cuts, ring, screw, section, slab } from '../sketch.ts';
import { sayRoot, screwedHoles } from '../screws.ts';

const check: Check = {
  id: 'pilot-too-wide',
  stage: 'derived',
  severity: 'error',
  why: 'The thread grips too little wood: the screw strips when it is driven, or pulls out later.',
  mend: 'Drill a narrower pilot, or use a thicker screw.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'screw: cover-6',
    fails: 'screw: cover-4',
  },
  sketch: section(
    slab(),
    cuts(bore({ from: [30, 0], to: [30, 16], width: 7.4 })),
    screw([30, 0], [30, 13], { width: 5.4, head: 11 }),
    ring(33.4, 7, 3.4),
  ),
  run: (bench) =>
    screwedHoles(bench).flatMap(({ id, hole, name }) => {
      const seen = look(bench.facts, (use) => ({
        pilot: use(hole.diameter),
        most: use.fact(`screw.${id}.most-pilot`),
        wood: use.fact(`screw.${id}.wood`),
      }));
      if (!seen || seen.pilot.value <= seen.most.value) return [];
      const { pilot, most, wood } = seen;
      return [
        {
          at: hole.diameter.id,
          what: `The pilot is ${say(pilot, pilot.value)} wide. For ${name} in the ${wood} it may be at most ${say(pilot, most.value)}, by the density of the wood: ${sayRoot(bench, id, pilot)}.`,
          mend: `Drill ${say(pilot, most.value)} at most, or use a thicker screw.`,
          against: [{ at: hole.screw.id, text: 'the screw that goes in' }],
          hangsOn: [`screw.${id}.most-pilot`],
        },
      ];
    }),
};
export default check;
