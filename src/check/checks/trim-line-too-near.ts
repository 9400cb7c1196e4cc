/** The second saw cut cannot stray into the body. */
import { row, wanted } from '../../facts/row.ts';
import type { Check } from '../check.ts';
import { look } from '../check.ts';
import { say } from '../say.ts';
import { line, plan, ring, waste } from '../sketch.ts';

const check: Check = {
  id: 'trim-line-too-near',
  stage: 'derived',
  severity: 'error',
  why: 'A saw strays from its line: one that runs too near the outline cuts into the body sooner or later.',
  mend: 'Move the trim line out, or use a saw that strays less.',
  example: { file: 'models/plant/plant.yaml', passes: 'trim-line: 2.5', fails: 'trim-line: 0.7' },
  sketch: plan(waste(-2, 12), line('M -0.4 -16 C 0.6 -8 -0.6 -4 -3 0 C -5 4 0 8 0.4 16', 'saw'), ring(-3, 1.4, 3.6)),
  run: ({ subject: { plant }, facts }) => {
    const seen = look(facts, (use) => {
      const at = row(plant.stations, 'trim-sawing', 'plant.stations').machine;
      const wander = row(plant.machines, use(wanted(at, 'machine')), 'plant.machines').wander;
      return wander && { wander: use(wander), id: wander.id, trim: use.fact('saw.trim.distance') };
    });
    if (!seen || seen.trim.value > seen.wander.value) return [];
    const { wander, trim, id } = seen;
    return [
      {
        at: 'saw.trim.distance',
        what: `The trim line runs ${say(trim, trim.value)} outside the outline, and the saw may stray by ${say(trim, wander.value)}.`,
        mend: `Put the trim line more than ${say(trim, wander.value)} outside.`,
        against: [{ at: id, text: 'how far the saw strays' }],
      },
    ];
  },
};
export default check;
