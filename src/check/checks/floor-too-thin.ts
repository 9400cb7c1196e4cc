/** Every floor keeps, at worst, the least wood the line wants. */
import type { Check } from '../check.ts';
import { look } from '../check.ts';
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
  run: (bench) => {
    const least = look(bench.facts, (use) => leastWanted(bench, use, 'least-floor'));
    if (!least) return [];
    return woodsOf(bench, 'floor')
      .filter(({ worst }) => worst > 0 && worst < least.value)
      .map((thin) => thinFault(bench, thin, least.value, least.at));
  },
};
export default check;
