/** A pilot is as wide as its wood asks for: for the thread, and for a smooth shank where one goes in. */
import type { Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { say } from '../say.ts';
import { bore, cuts, line, ring, screw, section, slab } from '../sketch.ts';
import { sayRoot, screwedHoles } from '../screws.ts';

const check: Check = {
  id: 'pilot-too-narrow',
  stage: 'derived',
  severity: 'caution',
  why: 'Dense wood splits round the screw, or the screw breaks off in it.',
  mend: 'Drill a wider pilot, or use a thinner screw; for a smooth shank, one threaded up to its head.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'length: 7/16 in, head: 6.6, holds: 2.0',
    fails: 'length: 7/16 in, thread: 6, head: 6.6, holds: 2.0',
  },
  sketch: section(
    slab(),
    cuts(bore({ from: [30, 0], to: [30, 16], width: 1.6 })),
    screw([30, 0], [30, 14], { width: 6, head: 11 }),
    line('M 33 5.6 L 37 4.8 L 41 6.2 L 47 5.2 M 27 6 L 23 6.8 L 19 5.6 L 13 6.4 M 32 9.8 L 36 10.6 L 42 9.4'),
    ring(40, 5.6, 4),
  ),
  run: (bench) =>
    screwedHoles(bench).flatMap(({ id, hole, name, thread, length }): Fault[] => {
      const seen = look(bench.facts, (use) => ({
        pilot: use(hole.diameter),
        least: use.fact(`screw.${id}.least-pilot`),
        shank: use.fact(`screw.${id}.shank-hole`),
        smooth: use.fact(`screw.${id}.smooth`),
        wood: use.fact(`screw.${id}.wood`),
      }));
      if (!seen) return [];
      const { pilot, least, shank, smooth, wood } = seen;
      const against = [{ at: hole.screw.id, text: 'the screw that goes in' }];
      if (pilot.value < least.value) {
        return [
          {
            at: hole.diameter.id,
            what: `The pilot is ${say(pilot, pilot.value)} wide. For ${name} in the ${wood} it must be at least ${say(pilot, least.value)}, by the density of the wood: ${sayRoot(bench, id, pilot)}.`,
            mend: `Drill ${say(pilot, least.value)} at least, or use a thinner screw.`,
            against,
            hangsOn: [`screw.${id}.least-pilot`],
          },
        ];
      }
      if (smooth.value <= 0 || pilot.value >= shank.value) return [];
      return [
        {
          at: hole.screw.id,
          what: `${say(pilot, smooth.value)} of the smooth shank of ${name} go into a pilot of ${say(pilot, pilot.value)}. A smooth shank in the ${wood} needs a hole of ${say(pilot, shank.value)}.`,
          mend: 'Use a screw threaded up to its head, or a shorter one.',
          against: [{ at: thread ?? length, text: 'how much of the screw has thread' }],
          hangsOn: [`screw.${id}.smooth`],
        },
      ];
    }),
};
export default check;
