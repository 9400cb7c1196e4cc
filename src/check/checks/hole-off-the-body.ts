/** Holes lie inside the body. */
import { namesOf } from '../../facts/row.ts';
import { contains } from '../../geometry/nearness.ts';
import type { Check } from '../check.ts';
import { look } from '../check.ts';
import { sayPoint } from '../say.ts';
import { centreline, hole, outline, plan, ring } from '../sketch.ts';

const check: Check = {
  id: 'hole-off-the-body',
  stage: 'derived',
  severity: 'error',
  why: 'A drill that comes down beside the body meets the fixture; one in the edge splits it.',
  mend: 'Move the hole into the body.',
  example: { file: 'models/tarn.yaml', passes: 'at: { x: -37, y: -3 }', fails: 'at: { x: -370, y: -3 }' },
  sketch: plan(outline(), centreline(), hole(-9, -1, 2), hole(13, 10, 2.2), ring(13, 10, 4)),
  run: ({ subject: { spec, hand }, facts }) =>
    namesOf(spec.holes).flatMap((id) => {
      const seen = look(facts, (use) => ({ spot: use.fact(`hole.${id}.spot`), outline: use.fact('outline.polygon') }));
      if (!seen || contains(seen.outline, seen.spot.xMm, seen.spot.yMm)) return [];
      const { xMm, yMm } = seen.spot;
      return [
        {
          at: spec.holes![id]!.at.x.id,
          what: `The hole ${id} lies at ${sayPoint({ x: xMm, y: yMm }, hand)}, outside the body.`,
          mend: 'Move it into the body.',
          against: [{ at: 'outline.path', text: 'the outline' }],
        },
      ];
    }),
};
export default check;
