/** The neck pocket is open at the edge of the body, as wide as the neck: the heel goes in and the neck comes out. */
import { row } from '../../facts/row.ts';
import type { Check } from '../check.ts';
import { look } from '../check.ts';
import { say, sayPoint } from '../say.ts';
import { neckEnd, neckPlan, plan, pocket, ring, way } from '../sketch.ts';

const check: Check = {
  id: 'pocket-closed-at-neck',
  stage: 'derived',
  severity: 'error',
  why: 'Wood stands where the neck must come in: the heel does not go in, or its fingerboard lies on it.',
  mend: 'Move the pocket towards the neck or make it longer: its sides run out past the edge, its round corners too.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'neck-pocket: { at: { x: 0, y: 190 }',
    fails: 'neck-pocket: { at: { x: 0, y: 184 }',
  },
  sketch: plan(neckEnd(10), pocket(-12, -6, 6, 6, 1), neckPlan(15, 0, 5), way([23, -9], [10, -9]), ring(8, 0, 3.4)),
  run: ({ subject: { spec, hand }, facts }) => {
    const seen = look(facts, (use) => {
      const pocket = spec.neck.pocket && use(spec.neck.pocket);
      if (pocket === undefined) return undefined;
      const { at, shape } = row(spec.cavities, pocket, 'cavities');
      return { pocket, at: use(at.y) && at.y.id, long: shape.length, wood: use.fact('neck.mouth-wood') };
    });
    if (!seen?.wood) return [];
    const { pocket, at, long, wood } = seen;
    return [
      {
        at,
        what: `Between ${pocket} and the edge of the body ${say(wood.thick, wood.thick.value)} of wood stand across the way of the neck, at ${sayPoint(wood.at, hand)}: the pocket ends too soon.`,
        mend: `Move the pocket ${say(wood.short, wood.short.value)} towards the neck, or make it that much longer there.`,
        against: [
          ...(long ? [{ at: long.id, text: 'how long the pocket is' }] : []),
          { at: spec.outline.path.id, text: 'the outline' },
        ],
        hangsOn: ['neck.mouth-wood'],
      },
    ];
  },
};
export default check;
