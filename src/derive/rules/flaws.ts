/** Where a flaw of the top may lie: what is cut away from above, or hidden by a plate. */
import { practice } from '../../facts/facts.ts';
import { cutId, cutsOf } from '../../facts/cuts.ts';
import { namesOf } from '../../facts/row.ts';
import { intersection, union } from '../../geometry/offset.ts';
import type { Region } from '../../geometry/polygon.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';

declare module '../../facts/facts.ts' {
  interface DerivedFacts {
    'flaws.hidden': Region;
  }
}

const rule: Rule = ({ spec }) => [
  derivation({
    id: 'flaws.hidden',
    label: 'where a flaw of the top does not show',
    formula: 'cavities and holes that open to the top, and plates on it, inside the outline',
    source: practice('a flaw is placed where it is cut away or covered; common practice, no source'),
    value: (use) => {
      const cut = cutsOf(spec).flatMap((one) => {
        const own = use.fact(`${cutId(one)}.void`);
        return own.kind === 'pocket' && own.opens === 'top' ? own.region : [];
      });
      const plates = namesOf(spec.covers).flatMap((id) => {
        const drawn = use.fact(`cover.${id}.drawn`);
        return use(spec.covers![id]!.face) === 'top' && drawn.ok ? [drawn.polygon] : [];
      });
      return intersection(union([...cut, ...plates], []), [use.fact('outline.polygon')]);
    },
  }),
];
export default rule;
