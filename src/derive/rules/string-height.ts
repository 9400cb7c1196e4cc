/** How high the strings run over the top at the bridge, from the pocket, the neck's heel and its angle. */
import { byDefinition } from '../../facts/facts.ts';
import { wanted } from '../../facts/row.ts';
import { add } from '../../units/arithmetic.ts';
import type { Length } from '../../units/quantity.ts';
import { planeOverTop } from '../neck-plane.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';

declare module '../../facts/facts.ts' {
  interface DerivedFacts {
    'bridge.string-height': Length;
  }
}

const rule: Rule = (subject) =>
  subject.spec.neck?.heel === undefined
    ? []
    : [
        derivation({
          id: 'bridge.string-height',
          label: 'strings over the top at the bridge line',
          formula:
            'floor of the pocket, carried on at its slope to the bridge line, or the back of a neck that runs through, + heel + strings over the fingerboard plane − top there',
          source: byDefinition,
          value: (use) => add(planeOverTop(subject, use, 0), use(wanted(subject.spec.neck.strings, 'neck.strings'))),
        }),
      ];
export default rule;
