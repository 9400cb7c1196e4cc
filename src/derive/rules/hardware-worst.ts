/** What is left to a part at the worst of all that goes into it: what the card says of it. */
import type { Use } from '../../facts/facts.ts';
import { practice } from '../../facts/facts.ts';
import { fittedId, insideOf } from '../../facts/fitted.ts';
import type { FittedId } from '../../facts/fitted.ts';
import type { Length } from '../../units/quantity.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';

declare module '../../facts/facts.ts' {
  interface DerivedFacts {
    [id: `fitted.${FittedId}.${'room' | 'depth' | 'to-cover'}-worst`]: Length | undefined;
  }
}

const OF = { room: 'room', depth: 'depth.least', 'to-cover': 'to-cover' } as const;
const LABEL = { room: 'room to the wall', depth: 'depth it finds', 'to-cover': 'room to the cover' } as const;

const rule: Rule = ({ spec }) =>
  insideOf(spec).flatMap((fitted) =>
    (fitted.kind === 'hole' ? (['room', 'depth', 'to-cover'] as const) : (['room', 'depth'] as const)).map((what) => {
      const id = fittedId(fitted);
      return derivation({
        id: `fitted.${id}.${what}-worst`,
        label: `part at ${fitted.kind} ${fitted.id}: ${LABEL[what]}, at worst`,
        formula: 'low limit',
        source: practice('all causes at their worst at once; no source'),
        value: (use) => lowest(use, `fitted.${id}.${OF[what]}` as Limited),
      });
    }),
  );
export default rule;

type Limited = `fitted.${FittedId}.room` | `fitted.${FittedId}.depth.least` | `fitted.hole.${string}.to-cover`;

function lowest(use: Use, id: Limited): Length | undefined {
  const q = use.fact(id);
  return q && { kind: 'length', value: q.low ?? q.value, unit: q.unit, decimals: q.decimals };
}
