/** The first saw, where it strays inward, still leaves the second a whole kerf of wood outside its line. */
import { sawOf } from '../../facts/saw.ts';
import type { Check } from '../check.ts';
import { look } from '../check.ts';
import { say } from '../say.ts';
import { across, plan, sawLine, waste } from '../sketch.ts';

const check: Check = {
  id: 'saw-lines-crossed',
  stage: 'derived',
  severity: 'error',
  why: 'A second cut outside the first finds no wood to follow; where part of its kerf is in the air, the blade runs off into the cut before.',
  mend: 'Put the rough line further out than the trim line.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'rough-line: 6\n',
    fails: 'rough-line: 2\n',
  },
  sketch: plan(waste(-12, 2), sawLine(11), across(1, 2, 11)),
  run: ({ subject, facts }) => {
    const lines = look(facts, (use) => ({
      rough: use.fact('saw.rough.distance'),
      trim: use.fact('saw.trim.distance'),
    }));
    if (!lines) return [];
    const { rough, trim } = lines;
    // A saw whose kerf nobody gave is held to the bare lines.
    const saws = look(facts, (use) => ({ rough: sawOf(subject, use, 'rough'), trim: sawOf(subject, use, 'trim') }));
    const strays = saws?.rough.wander.value ?? 0;
    const kerf = saws?.trim.kerf.value ?? 0;
    const needed = trim.value + kerf + strays;
    if (rough.value > trim.value && rough.value >= needed) return [];
    const sum = saws
      ? `: ${say(trim, trim.value)} + ${say(trim, kerf)} for its kerf + ${say(trim, strays)} that the rough saw strays = ${say(trim, needed)}`
      : '';
    return [
      {
        at: 'saw.rough.distance',
        what: `The rough line is ${say(rough, rough.value)} outside the outline, the trim line ${say(trim, trim.value)}: no whole kerf of wood is left for the trim saw${sum}.`,
        mend: `Put the rough line ${saws ? 'at least' : 'more than'} ${say(rough, needed)} outside, or the trim line nearer to the outline.`,
        against: [
          { at: 'saw.trim.distance', text: 'the trim line' },
          ...(saws
            ? [
                { at: saws.trim.at.kerf, text: 'how wide the trim saw cuts' },
                { at: saws.rough.at.wander, text: 'how far the rough saw strays' },
              ]
            : []),
        ],
      },
    ];
  },
};
export default check;
