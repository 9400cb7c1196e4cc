/** How deep each set-up cuts along the perimeter. */
import type { SetupId } from '../../facts/cutting-order.ts';
import { setupOrder } from '../../facts/cutting-order.ts';
import { practice } from '../../facts/facts.ts';
import type { Use } from '../../facts/facts.ts';
import { highestPoint } from '../../facts/parts.ts';
import type { Subject } from '../../facts/subject.ts';
import { scale } from '../../units/arithmetic.ts';
import type { Length } from '../../units/quantity.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';

declare module '../../facts/facts.ts' {
  interface DerivedFacts extends Record<`perimeter.${SetupId}.deep`, Length> {}
}

const rule: Rule = (subject) =>
  setupOrder
    .filter((setup) => subject.spec.setups[setup]?.cutters?.perimeter !== undefined)
    .map((setup) =>
      derivation({
        id: `perimeter.${setup}.deep`,
        label: `set-up ${setup}: how deep its perimeter cutter goes`,
        formula:
          'thickness of the machined body, or half of it where both sides cut it; before lamination that of the back',
        source: practice('where two sides cut, each is taken to cut half; no source'),
        value: (use) => deep(subject, use, setup),
      }),
    );
export default rule;

function deep({ spec }: Subject, use: Use, setup: SetupId): Length {
  if (setup === 'glue-face') return use.fact('thickness.part.back.sized');
  const sides = (['back', 'top'] as const).filter((side) => spec.setups[side]?.cutters?.perimeter).length;
  return scale(use.fact(`thickness.body.machined.${highestPoint(spec)}`), 1 / sides);
}
