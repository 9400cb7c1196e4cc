/** Steps of the thickness map: from the least wood the line wants in a floor, each twice the one before. */
import { practice } from '../../facts/facts.ts';
import { row } from '../../facts/row.ts';
import { scale } from '../../units/arithmetic.ts';
import type { Length } from '../../units/quantity.ts';
import { lengthOfMm } from '../lengths.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';

export type MapStep = 1 | 2 | 3 | 4;

declare module '../../facts/facts.ts' {
  interface DerivedFacts extends Record<`map.step.${MapStep}`, Length> {}
}

/** Where the line gives no least floor. */
const DEFAULT_MM = 3;

const rule: Rule = ({ spec, plant }) =>
  ([1, 2, 3, 4] as const).map((step) =>
    derivation({
      id: `map.step.${step}`,
      label: `thickness map, step ${step}`,
      formula: 'least floor of the line × 2 to the power of the step',
      source: practice('steps far enough apart to tell their hatchings; common practice, no source'),
      value: (use) => {
        const least = row(plant.lines, use(spec.line), 'plant.lines')['least-floor'];
        return scale(least ? use(least) : lengthOfMm(DEFAULT_MM), 2 ** step);
      },
    }),
  );
export default rule;
