/** Glue on the joint of cap and back. */
import { byDefinition } from '../../facts/facts.ts';
import type { Quantity } from '../../units/quantity.ts';
import { adhesiveOf } from '../adhesive.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';

declare module '../../facts/facts.ts' {
  interface DerivedFacts {
    'lamination.glue': Quantity<'mass'>;
  }
}

const rule: Rule = (subject) =>
  subject.spec.timber.cap
    ? [
        derivation({
          id: 'lamination.glue',
          label: 'glue on the joint of cap and back',
          formula: 'spread × area of the joint, chambers left out',
          source: byDefinition,
          value: (use) => ({
            kind: 'mass',
            value: use(adhesiveOf(subject, use, 'adhesive').spread).value * use.fact('joint.area').value,
            unit: 'g',
            decimals: 0,
          }),
        }),
      ]
    : [];
export default rule;
