/** Under the point of every screw the least floor is left, at worst. */
import type { Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { say } from '../say.ts';
import { plate, ring, screw, section, slab } from '../sketch.ts';
import { screwedHoles } from '../screws.ts';
import { goesThrough, leastWanted, nameOf, woodsOf } from '../thin.ts';

const check: Check = {
  id: 'screw-point-through',
  stage: 'derived',
  severity: 'error',
  why: 'The point comes out in a finished face, or bulges it.',
  mend: 'Use a shorter screw, or move it to thicker wood.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'length: 7/16 in, head: 6.6, holds: 2.0',
    fails: 'length: 2 in, head: 6.6, holds: 2.0',
    also: ['pilot-too-shallow'],
  },
  sketch: section(slab({ bottom: 12 }), plate(12, 48), screw([30, -1.4], [30, 16]), ring(30, 14, 3.4, 'lower-right')),
  run: (bench) => {
    const least = look(bench.facts, (use) => leastWanted(bench, use, 'least-floor'));
    if (!least) return [];
    const screwed = screwedHoles(bench);
    return woodsOf(bench, 'floor').flatMap((thin): Fault[] => {
      const own = screwed.find(({ id }) => thin.cut.kind === 'hole' && thin.cut.id === id);
      // The pilot itself too deep is another check's.
      if (!own || thin.worst < least.value || goesThrough(bench, thin)) return [];
      const beyond = look(bench.facts, (use) => use.fact(`screw.${own.id}.beyond`));
      const more = Math.max(0, beyond?.high ?? beyond?.value ?? 0);
      const left = thin.worst - more;
      if (left >= least.value) return [];
      const there = nameOf(thin.other);
      const says =
        left > 0
          ? `Between the point of ${own.name} and ${there} ${say(thin.wood, left)} of wood are left at worst.`
          : `The point of ${own.name} goes ${say(thin.wood, -left)} ${typeof thin.other === 'string' ? 'out through' : 'into'} ${there} at worst.`;
      return [
        {
          at: own.hole.screw.id,
          what: `${says} At least ${say(thin.wood, least.value)} of wood must be left before it.`,
          mend: `Use a screw at least ${say(thin.wood, least.value - left)} shorter.`,
          against: [
            { at: own.length, text: 'length of the screw' },
            { at: least.at, text: 'the least wood that must be left' },
          ],
          hangsOn: [thin.fact, `screw.${own.id}.beyond`],
        },
      ];
    });
  },
};
export default check;
