/** A neck that is bolted on has screws, and they have holes in the body that they slide through. */
import { row } from '../../facts/row.ts';
import type { Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { say } from '../say.ts';
import { gap, neckSide, rect, ring, screw, section, shape, slab } from '../sketch.ts';

const check: Check = {
  id: 'neck-screws-missing',
  stage: 'derived',
  severity: 'error',
  why: 'A screw that bites into the body as well holds the neck off its pocket: the joint never closes, however hard it is turned.',
  mend: 'Drill the holes of the neck screws as wide as their thread, or wider.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'title: Neck screw 8, gauge: 8',
    fails: 'title: Neck screw 8, gauge: 10',
  },
  sketch: section(
    slab({ right: 52, face: 'H 20 V 10 H 52' }),
    neckSide({ heel: 20.6, floor: 7.4, board: 16, top: -2.4 }),
    shape(rect(28, 17, 44, 18.4), 'metal', 'edge'),
    screw([36, 19], [36, 1]),
    ring(36, 13.4, 3.2),
    gap(28, 7.4, 10, 'start'),
  ),
  run: ({ subject: { spec, plant }, facts }) => {
    const { screws, pocket, kind, heel } = spec.neck;
    // A neck that is not yet described has no screws either.
    if (!screws && heel && look(facts, (use) => use(kind)) === 'bolt-on')
      return [
        {
          at: kind.id,
          what: 'The neck is to be bolted on, and no screws are given for it.',
          mend: 'Give its screws under `screws`, or say that the neck is glued in (set).',
          against: [],
        },
      ];
    if (!screws || !pocket) return [];
    const seen = look(facts, (use) => ({
      holes: use.fact('neck.screw-holes'),
      shank: use.fact('neck.screw-shank'),
      cavity: use(pocket),
      gauge: row(plant.screws, use(screws.row), 'plant.screws').gauge.id,
    }));
    if (!seen) return [];
    if (seen.holes.length === 0) {
      return [
        {
          at: screws.row.id,
          what: `No hole for a screw runs into ${seen.cavity}, and the neck is held by screws.`,
          mend: `Give holes with use: screw and into: [${seen.cavity}], or take the screws out.`,
          against: [{ at: pocket.id, text: 'the pocket' }],
          hangsOn: ['holes'],
        },
      ];
    }
    return seen.holes.flatMap((id): Fault[] => {
      const { diameter } = spec.holes![id]!;
      const width = look(facts, (use) => use(diameter));
      if (!width || (width.low ?? width.value) >= seen.shank.value) return [];
      return [
        {
          at: diameter.id,
          what: `The hole ${id} is ${say(width, width.low ?? width.value)} wide, and the thread of the neck screw ${say(width, seen.shank.value)}: it bites into the body.`,
          mend: `Drill it ${say(width, seen.shank.value)} or wider.`,
          against: [
            { at: screws.row.id, text: 'the screw' },
            { at: seen.gauge, text: 'the gauge of the screw' },
          ],
          hangsOn: ['neck.screw-shank'],
        },
      ];
    });
  },
};
export default check;
