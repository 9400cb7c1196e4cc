/** A cap is matched of two halves. */
import { capOf, partsOf } from '../../facts/parts.ts';
import type { Check } from '../check.ts';
import { look } from '../check.ts';
import { across, line, plan, rect, shape } from '../sketch.ts';

const check: Check = {
  id: 'match-without-pair',
  stage: 'spec',
  severity: 'error',
  why: 'A book opens into two leaves: with another number of pieces the seam does not lie on the centreline and the figure does not mirror.',
  mend: 'Make it two halves, or say that they are not matched.',
  example: { file: 'models/tarn.yaml', passes: 'halves: 2, match: book', fails: 'halves: 3, match: book' },
  sketch: plan(
    shape(rect(-26, -10, -9, 10), 'air', 'edge'),
    shape(rect(-9, -10, 9, 10), 'air', 'edge'),
    shape(rect(9, -10, 26, 10), 'air', 'edge'),
    line(
      'M -26 -4 Q -17 -4 -9 -10 M -26 2 Q -17 2 -9 -4 M -26 8 Q -17 8 -9 2 M -9 -4 Q 0 -4 9 -10 M -9 2 Q 0 2 9 -4 M -9 8 Q 0 8 9 2 M 9 -10 Q 17 -4 26 -4 M 9 -4 Q 17 2 26 2 M 9 2 Q 17 8 26 8',
      'thin',
    ),
    line('M 0 -16 V 16', 'centre'),
    across(12.6, 0, 9, 'end'),
  ),
  run: ({ subject: { spec }, facts }) => {
    if (!partsOf(spec).includes('cap')) return [];
    const seen = look(facts, (use) => ({
      halves: use(capOf(spec).halves).value,
      match: use(capOf(spec).match),
      at: capOf(spec).halves.id,
      other: capOf(spec).match.id,
    }));
    if (!seen || seen.match === 'none' || seen.halves === 2) return [];
    return [
      {
        at: seen.at,
        what: `The cap is to be ${seen.match}-matched, and it is made of ${seen.halves === 1 ? 'one piece' : `${seen.halves} pieces`}.`,
        mend: 'Give it two halves, or "match: none".',
        against: [{ at: seen.other, text: 'how it is matched' }],
      },
    ];
  },
};
export default check;
