/** The outline is one closed line that does not cross itself. */
import type { Check } from '../check.ts';
import { look } from '../check.ts';
import { sayPoint, sentence } from '../say.ts';
import { plan, ring, shape } from '../sketch.ts';

const check: Check = {
  id: 'outline-not-drawable',
  stage: 'derived',
  severity: 'error',
  why: 'Saw lines, blank and drawings follow the outline: one that cannot be drawn, or crosses itself, cannot be sawn.',
  mend: 'Draw the outline in one sweep round the body.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'M -90 -200 L 90 -200 A 60',
    fails: 'M -90 -200 L 90 260 A 60',
  },
  sketch: plan(
    shape(
      'M -20 -10 C -2 -10 2 10 18 10 C 28 10 28 -10 18 -10 C 2 -10 -2 10 -20 10 C -28 10 -28 -10 -20 -10 Z',
      'wood',
      'edge',
    ),
    ring(-1, 0, 3.6),
  ),
  run: ({ subject: { hand }, facts }) => {
    const outline = look(facts, (use) => use.fact('outline.drawn'));
    if (!outline || outline.ok) return [];
    const { at, what, mend, crossing } = outline;
    const where = crossing ? ` near ${sayPoint(crossing, hand)}` : '';
    return [
      {
        at: 'outline.path',
        ...(crossing ? {} : { within: [at, at + 1] as const }),
        what: `The outline cannot be drawn: ${what}${where}.`,
        mend: sentence(mend),
        against: [],
      },
    ];
  },
};
export default check;
