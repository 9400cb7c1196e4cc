/** How far the seam of a matched cap may lie off the centreline: by the jig that drills the location holes. */
import { practice } from '../../facts/facts.ts';
import { row, wanted } from '../../facts/row.ts';
import { add, nominal } from '../../units/arithmetic.ts';
import type { Length } from '../../units/quantity.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';

declare module '../../facts/facts.ts' {
  interface DerivedFacts {
    'seam.off': Length;
  }
}

const rule: Rule = ({ spec, plant }) =>
  spec.timber.cap
    ? [
        derivation({
          id: 'seam.off',
          label: 'how far the seam of the cap may lie off the centreline',
          formula:
            'error of the jig’s mark; of a jig set against an edge also what jointing may take off one half more than off the other',
          source: practice('common practice, no source'),
          value: (use) => {
            const name = use(spec.location.jig);
            const jig = row(plant.jigs, name, 'plant.jigs');
            const mark = nominal(use(wanted(jig['seam-error'], `plant.jigs.${name}.seam-error`)));
            if (use(wanted(jig['registers-on'], `plant.jigs.${name}.registers-on`)) === 'seam') return mark;
            const line = use(spec.line);
            const jointing = row(plant.lines, line, 'plant.lines').jointing;
            return add(mark, nominal(use(wanted(jointing, `plant.lines.${line}.jointing`))));
          },
        }),
      ]
    : [];
export default rule;
