/** Where a station measures there is wood: the line of its points lies inside the piece. */
import { namesOf, present } from '../../facts/row.ts';
import type { Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { say } from '../say.ts';
import { centreMark, plan, rect, ring, shape } from '../sketch.ts';

const check: Check = {
  id: 'points-off-the-piece',
  stage: 'derived',
  severity: 'error',
  why: 'The card would show no place to put the gauge, and everybody would measure somewhere else.',
  mend: 'Let the points lie nearer to the edge.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'inset: 30',
    fails: 'inset: 300',
  },
  sketch: plan(
    shape(rect(-24, -9, 16, 9), 'wood', 'edge'),
    centreMark(-18, 0),
    centreMark(-3, 0),
    centreMark(12, 0),
    centreMark(24, 0),
    ring(24, 0, 3.4),
  ),
  run: ({ subject: { plant }, facts }) =>
    namesOf(present(plant.stations)).flatMap((station): Fault[] => {
      const { inset, points } = plant.stations![station]!;
      const fact = `points.${station}` as const;
      const seen = inset && points && look(facts, (use) => ({ inset: use(inset), at: use.fact(fact) }));
      if (!seen || seen.at.length > 0) return [];
      return [
        {
          at: inset.id,
          what: `The points of ${station} are to lie ${say(seen.inset, seen.inset.value)} inside the edge, and this body is not wide enough for that.`,
          mend: 'Let the points lie nearer to the edge.',
          against: [{ at: points.id, text: 'how many points are measured' }],
          hangsOn: [fact],
        },
      ];
    }),
};
export default check;
