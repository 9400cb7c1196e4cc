/** Every number given in a model prints, or is checked. */
import { leavesOf } from '../../facts/leaves.ts';
import type { Check } from '../check.ts';

const check: Check = {
  id: 'number-unused',
  stage: 'card',
  severity: 'error',
  why: 'Somebody wrote it because it matters, and it reaches no station: the next one who changes it changes nothing.',
  mend: 'Take it out, or put it where a station reads it.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'shape: { kind: rectangle, length: 62, width: 70 }',
    fails: 'shape: { kind: rectangle, length: 62, width: 70, diameter: 40 }',
  },
  run: ({ subject: { spec }, facts, seen }) => {
    if (seen.length === 0) return [];
    const used = facts.consulted();
    return leavesOf(spec)
      .filter((leaf) => !used.has(leaf.id) && typeof facts.peek(leaf) !== 'string')
      .map((leaf) => {
        facts.note(leaf);
        return {
          at: leaf.id,
          what: `${leaf.text} (${leaf.id}) neither prints on a card nor goes into a check.`,
          mend: 'Take it out, or put it where a station reads it.',
          against: [],
        };
      });
  },
};
export default check;
