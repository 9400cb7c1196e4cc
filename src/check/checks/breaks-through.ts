/** No cut breaks through into a face or another cut that it is not meant to run into. */
import type { Check } from '../check.ts';
import { look } from '../check.ts';
import { cut, cuts, ring, section, slab } from '../sketch.ts';
import { goesThrough, leastWanted, thinFault, woodsOf } from '../thin.ts';

const check: Check = {
  id: 'breaks-through',
  stage: 'derived',
  severity: 'error',
  why: 'A hole where there should be none: in the top of a finished body, or between two cavities, seen when the cutter is already through.',
  mend: 'Cut less deep, move one of the two, or say with `into` that they are meant to meet.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'depth: 15.0 ±0.6',
    fails: 'depth: 32.0 ±0.6',
  },
  sketch: section(
    slab(),
    cuts(cut({ from: 8, to: 34, depth: 11 }), cut({ from: 26, to: 50, depth: 10, back: true })),
    ring(30, 9, 4.6),
  ),
  run: (bench) => {
    // What mends it leaves as much as the line wants, where it says.
    const least = look(bench.facts, (use) => leastWanted(bench, use, 'least-floor'));
    return woodsOf(bench, 'floor')
      .filter((thin) => thin.worst <= 0 && !goesThrough(bench, thin))
      .map((thin) => thinFault(bench, thin, least?.value ?? 0, least?.at));
  },
};
export default check;
