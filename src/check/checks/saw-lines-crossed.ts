/** The first saw cut runs outside the second, the second outside the outline. */
import type { Check } from '../check.ts';
import { look } from '../check.ts';
import { say } from '../say.ts';

const check: Check = {
  id: 'saw-lines-crossed',
  stage: 'derived',
  severity: 'error',
  why: 'A second cut outside the first finds no wood to follow, and a blade inside the outline has cut the body.',
  mend: 'Put the rough line further out than the trim line.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'rough-line: 6\n',
    fails: 'rough-line: 2\n',
  },
  run: ({ facts }) => {
    const seen = look(facts, (use) => ({ rough: use.fact('saw.rough.distance'), trim: use.fact('saw.trim.distance') }));
    if (!seen || seen.rough.value > seen.trim.value) return [];
    const { rough, trim } = seen;
    return [
      {
        at: 'saw.rough.distance',
        what: `The rough line is ${say(rough, rough.value)} outside the outline, the trim line ${say(trim, trim.value)}: the rough line must be the further out.`,
        mend: `Put the rough line more than ${say(rough, trim.value)} outside.`,
        against: [{ at: 'saw.trim.distance', text: 'the trim line' }],
      },
    ];
  },
};
export default check;
