/** How far the floor of each cavity lies from the glue line: what is left of the cap above it, or cut into the back. */
import { byDefinition } from '../../facts/facts.ts';
import { partsOf } from '../../facts/parts.ts';
import { namesOf } from '../../facts/row.ts';
import { nominal, subtract } from '../../units/arithmetic.ts';
import type { Length } from '../../units/quantity.ts';
import { lengthOfMm } from '../lengths.ts';
import { floorEnds } from '../wood.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';

declare module '../../facts/facts.ts' {
  interface DerivedFacts {
    /** Over it where more than nothing, under it where less. */
    [id: `cavity.${string}.over-glue`]: Length;
  }
}

const rule: Rule = ({ spec }) =>
  !partsOf(spec).includes('cap')
    ? []
    : namesOf(spec.cavities).map((id) =>
        derivation({
          id: `cavity.${id}.over-glue`,
          label: `cavity ${id}: its floor over the glue line`,
          formula: 'height of its floor, at its lowest, less that of the glue face',
          source: byDefinition,
          value: (use) => {
            const { low } = floorEnds(use.fact(`cavity.${id}.void`));
            return nominal(subtract(lengthOfMm(low, 2), use.fact('glue.height')));
          },
        }),
      );
export default rule;
