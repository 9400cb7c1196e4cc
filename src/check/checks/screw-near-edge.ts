/** Beside every screw, not only beside its pilot, the least wall is left, at worst. */
import type { Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { say, sayPoint } from '../say.ts';
import { cut, cuts, plate, ring, screw, section, slab } from '../sketch.ts';
import { screwedHoles } from '../screws.ts';
import { leastWanted, nameOf, woodsOf } from '../thin.ts';

const check: Check = {
  id: 'screw-near-edge',
  stage: 'derived',
  severity: 'error',
  why: 'The thread is wider than its pilot: the wood beside it breaks out into the cavity or at the side.',
  mend: 'Move the pilot away from the edge, or use a thinner screw.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'at: { x: 40.8, y: -100 }',
    fails: 'at: { x: 41.2, y: -100 }',
  },
  sketch: section(
    slab(),
    cuts(cut({ from: 8, to: 30, depth: 12 })),
    plate(6, 38),
    screw([32.4, -1.4], [32.4, 10]),
    ring(30.4, 5, 3.4, 'lower-left'),
  ),
  run: (bench) => {
    const least = look(bench.facts, (use) => leastWanted(bench, use, 'least-wall'));
    if (!least) return [];
    const screwed = screwedHoles(bench);
    return woodsOf(bench, 'wall').flatMap((thin) =>
      [thin.cut, thin.other].flatMap((cut): Fault[] => {
        const own =
          typeof cut === 'string' || cut.kind !== 'hole' ? undefined : screwed.find(({ id }) => id === cut.id);
        // A pilot too near by itself is another check's.
        if (!own || thin.worst < least.value) return [];
        const seen = look(bench.facts, (use) => ({
          shank: use.fact(`screw.${own.id}.shank`),
          pilot: use(own.hole.diameter),
        }));
        const left = seen && thin.worst - Math.max(0, (seen.shank.value - seen.pilot.value) / 2);
        if (left === undefined || left >= least.value) return [];
        const beside = cut === thin.cut ? nameOf(thin.other) : nameOf(thin.cut);
        return [
          {
            at: own.hole.at.x.id,
            what: `Between the thread of ${own.name} in ${own.id} and ${beside} ${say(thin.wood, left)} of wood are left at worst, near ${sayPoint(thin.at, bench.subject.hand)}. At least ${say(thin.wood, least.value)} must be left.`,
            mend: `Move ${own.id} ${say(thin.wood, least.value - left)} away, or use a thinner screw.`,
            against: [
              { at: own.hole.screw.id, text: 'the screw that goes in' },
              { at: least.at, text: 'the least wood that must be left' },
            ],
            hangsOn: [thin.fact],
          },
        ];
      }),
    );
  },
};
export default check;
