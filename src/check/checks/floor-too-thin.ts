/** Every floor keeps, at worst, the least wood the line wants. */
import type { Check } from '../check.ts';
import { look } from '../check.ts';
import { BACK, cut, cuts, gap, section, slab } from '../sketch.ts';
import { leastWanted, thinFault, woodsOf } from '../thin.ts';

const check: Check = {
  id: 'floor-too-thin',
  stage: 'derived',
  severity: 'error',
  why: 'It drums, cracks under a screw, and the sander goes through it.',
  mend: 'Cut less deep, or leave more wood.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'floor: 5.0 ±0.4',
    fails: 'floor: 3.0 ±0.4',
  },
  sketch: section(slab(), cuts(cut({ from: 14, to: 46, depth: 15, corner: 1.5 })), gap(30, 15, BACK, 'end')),
  run: (bench) => {
    const least = look(bench.facts, (use) => leastWanted(bench, use, 'least-floor'));
    if (!least) return [];
    return woodsOf(bench, 'floor')
      .filter(({ worst }) => worst > 0 && worst < least.value)
      .map((thin) => thinFault(bench, thin, least.value, least.at));
  },
};
export default check;
