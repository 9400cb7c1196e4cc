/** A stage that is given is made by a set-up. */
import { facesBack } from '../../facts/parts.ts';
import { present } from '../../facts/row.ts';
import type { Check } from '../check.ts';
import { look } from '../check.ts';
import { BACK, gap, ideal, line, rect, section, shape, slab } from '../sketch.ts';

const check: Check = {
  id: 'stage-not-made',
  stage: 'derived',
  severity: 'caution',
  why: 'The thickness is on nobody’s card: no set-up cuts it.',
  mend: 'Let a set-up make the stage, or take the stage out.',
  example: {
    file: 'models/tarn.yaml',
    passes: '    faces: back\n',
    fails: '',
    also: ['depth-not-held'],
  },
  sketch: section(
    slab(),
    shape(rect(2, 12, 58, 17), 'removed'),
    ideal('M 2 12 H 58'),
    line('M 2 17 H 58'),
    gap(30, 12, BACK, 'start'),
  ),
  run: ({ subject: { spec }, facts }) => {
    const stage = present(present(spec.stages)?.body)?.['back-faced'];
    if (!stage || facesBack(spec) || look(facts, (use) => use(stage)) === undefined) return [];
    return [
      {
        at: 'stages.body.back-faced',
        what: 'The body is to be back-faced to this, but no set-up faces the back.',
        mend: 'Add "faces: back" to the set-up with the back up, or take this line out.',
        against: [],
      },
    ];
  },
};
export default check;
