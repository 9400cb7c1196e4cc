/** The outline of every cavity is one closed line that does not cross itself. */
import type { Facts } from '../../facts/facts.ts';
import { namesOf } from '../../facts/row.ts';
import type { Subject } from '../../facts/subject.ts';
import { selfCrossing } from '../../geometry/crossing.ts';
import type { Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { sayPoint, sentence } from '../say.ts';
import { crossed, outline, plan, ring, shape } from '../sketch.ts';

const check: Check = {
  id: 'cavity-not-drawable',
  stage: 'derived',
  severity: 'error',
  why: 'A cavity that cannot be drawn is missing from the cards, and whatever is checked against it is not checked.',
  mend: 'Draw its shape in one sweep that does not cross itself.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'shape: { kind: rectangle, length: 62, width: 70 }',
    fails: 'shape: { kind: path, path: M -30 -30 L 30 30 L 30 -30 L -30 30 Z }',
  },
  sketch: plan(outline(), shape(crossed(-6, 0, 9, 6), 'air', 'edge'), ring(-6, 0, 3.2)),
  run: ({ subject, facts }) => namesOf(subject.spec.cavities).flatMap((id) => fault(subject, facts, id)),
};
export default check;

function fault({ spec, hand }: Subject, facts: Facts, id: string): Fault[] {
  const drawn = look(facts, (use) => use.fact(`cavity.${id}.drawn`));
  if (!drawn) return [];
  const path = spec.cavities![id]!.shape.path;
  const shape = `cavities.${id}.shape.kind`;
  if (!drawn.ok) {
    const { at, what, mend } = drawn;
    const where = path ? ({ at: path.id, within: [at, at + 1] } as const) : { at: shape };
    return [{ ...where, what: `The cavity ${id} cannot be drawn: ${what}.`, mend: sentence(mend), against: [] }];
  }
  const crossing = selfCrossing(drawn.polygon);
  if (!crossing) return [];
  const what = `The shape of the cavity ${id} crosses itself near ${sayPoint(crossing, hand)}.`;
  return [{ at: path?.id ?? shape, what, mend: 'Draw it in one sweep round the cavity.', against: [] }];
}
