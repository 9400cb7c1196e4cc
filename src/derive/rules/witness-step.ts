/** The step that is left where the perimeter is cut from both sides: as much as the two set-ups may lie apart. */
import { practice } from '../../facts/facts.ts';
import { withCauses } from '../../units/arithmetic.ts';
import type { Length } from '../../units/quantity.ts';
import { forEachEdge } from '../../geometry/polygon.ts';
import { lengthOfMm } from '../lengths.ts';
import type { Place, Side } from '../location.ts';
import { apartCauses, perimeterOf, worstOf } from '../location.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';
import { setupOf } from '../surfaces.ts';

declare module '../../facts/facts.ts' {
  interface DerivedFacts {
    /** Nothing where the plant does not say how far a cut may lie off, or only one set-up cuts the perimeter. */
    'perimeter.step': Length | undefined;
    'perimeter.most-step': Length | undefined;
  }
}

const rule: Rule = (subject) => [
  derivation({
    id: 'perimeter.step',
    label: 'step where both cuts of the perimeter meet',
    formula:
      'how far the two set-ups may lie off sideways, one against the other, by machine and location, at the worst place of the outline',
    source: practice('two cuts from two set-ups do not meet better than both are placed; common practice, no source'),
    value: (use) => {
      const cutting = (['back', 'top'] as const).filter(
        (id) => setupOf(subject.spec, id).cutters?.perimeter !== undefined,
      );
      if (cutting.length < 2) return undefined;
      const [one, other] = cutting.map(perimeterOf) as [Side, Side];
      const places: Place[] = [];
      forEachEdge(use.fact('outline.polygon'), (xMm, yMm) => places.push({ xMm, yMm }));
      const causes = worstOf(places.map((at) => apartCauses(subject, use, one, other, at)));
      return causes.length === 0 ? undefined : withCauses(lengthOfMm(0, 2), causes);
    },
  }),
  derivation({
    id: 'perimeter.most-step',
    label: 'step where both cuts of the perimeter meet, at most',
    formula: 'upper limit of the step',
    source: practice('felt with a nail, measured with a gauge laid across; common practice, no source'),
    value: (use) => {
      const step = use.fact('perimeter.step');
      return step && { ...lengthOfMm(0, 2), value: step.high ?? 0 };
    },
  }),
];
export default rule;
