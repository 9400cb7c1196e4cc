/** Every bushing of a jig stands for a hole of its pattern, and every hole has one. */
import { namesOf } from '../../facts/row.ts';
import { placeOf } from '../../facts/placed.ts';
import type { Check } from '../check.ts';
import { look } from '../check.ts';
import { bushing, cut, cuts, hollow, rect, ring, section, slab } from '../sketch.ts';

const check: Check = {
  id: 'bushing-of-no-hole',
  stage: 'derived',
  severity: 'error',
  why: 'Nobody then knows how far off that hole may be drilled, or whether every body goes on its pins.',
  mend: 'Name the bushings as the pattern names its holes.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'hand: right\n    registers-on: seam\n    seam-error: 0.3\n    bushings: { neck',
    fails: 'hand: right\n    registers-on: seam\n    seam-error: 0.3\n    bushings: { nick',
  },
  sketch: section(
    slab({ top: 5, bottom: 15, fill: 'bed' }),
    cuts(cut({ from: 11, to: 21, depth: 10, at: 5 }), hollow(rect(11, 14.4, 21, 15.6))),
    bushing(16, 3.4, 15),
    bushing(42, -7, 4.6),
    ring(42, 5, 4.4, 'lower-right'),
  ),
  run: ({ subject: { spec, plant }, facts }) => {
    const seen = look(facts, (use) => {
      const name = use(spec.location.jig);
      const jig = plant.jigs && Object.hasOwn(plant.jigs, name) ? plant.jigs[name] : undefined;
      const pattern = jig && use(jig.pattern);
      const holes =
        pattern !== undefined && plant.patterns && Object.hasOwn(plant.patterns, pattern)
          ? plant.patterns[pattern]!.holes
          : undefined;
      return jig?.bushings && holes && { name, jig, bushings: jig.bushings, holes: namesOf(holes), pattern };
    });
    if (!seen) return [];
    const { name, jig, bushings, holes, pattern } = seen;
    const own = namesOf(bushings);
    const place = placeOf(bushings);
    const stand = {
      at: jig.title.id,
      ...(place ? { place } : {}),
      against: [{ at: jig.pattern.id, text: 'the pattern of the jig' }],
    };
    const bare = holes.filter((id) => !own.includes(id));
    const [strange] = own.filter((id) => !holes.includes(id));
    // A bushing too many, and every hole has its own: the pattern has lost a hole, and that is said elsewhere.
    if (bare.length === 0) return [];
    return [
      strange === undefined
        ? {
            ...stand,
            what: `Jig ${name} has bushings, and none for hole ${bare.join(', ')} of pattern ${pattern}.`,
            mend: `Give the bushing of ${bare.join(', ')}, or none at all where they are not known.`,
          }
        : {
            ...stand,
            what: `Jig ${name} has a bushing for ${strange}, and pattern ${pattern} has no hole of that name.`,
            mend: `Call the bushing as its hole is called: ${bare.join(', ')}.`,
          },
    ];
  },
};
export default check;
