/** The machined body as a solid, and on a grid: every cut in the order it is made. */
import type { Use } from '../../facts/facts.ts';
import { byDefinition } from '../../facts/facts.ts';
import { cutId } from '../../facts/cuts.ts';
import { cutsInOrder, setupOrder } from '../../facts/cutting-order.ts';
import { highestPoint, partsOf } from '../../facts/parts.ts';
import type { Subject } from '../../facts/subject.ts';
import type { Field } from '../../geometry/solid/field.ts';
import { fieldOf } from '../../geometry/solid/field.ts';
import { CELL_MM } from '../../geometry/solid/grid.ts';
import type { Solid } from '../../geometry/solid/solid.ts';
import { toMm } from '../lengths.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';

declare module '../../facts/facts.ts' {
  interface DerivedFacts {
    /** No cut in it yet: both faces over the outline. */
    'body.shaped': Solid;
    'body.solid': Solid;
    'body.field': Field;
  }
}

const rule: Rule = (subject) => [
  derivation({
    id: 'body.shaped',
    label: 'body with both faces, nothing cut in',
    formula: 'top and back over the outline',
    source: byDefinition,
    value: (use) => shaped(subject, use),
  }),
  derivation({
    id: 'body.solid',
    label: 'machined body',
    formula: 'body with both faces less every cavity, hole and channel, in the order they are cut',
    source: byDefinition,
    value: (use) => ({
      ...use.fact('body.shaped'),
      voids: setupOrder
        .filter((setup) => subject.spec.setups[setup] !== undefined)
        .flatMap((setup) => cutsInOrder(subject.spec, use, setup))
        .map((cut) => use.fact(`${cutId(cut)}.void`)),
    }),
  }),
  derivation({
    id: 'body.field',
    label: 'machined body on a grid',
    formula: 'wood over each cell of 1 mm, after every cut in order',
    source: byDefinition,
    value: (use) => {
      const cap = partsOf(subject.spec).includes('cap');
      return fieldOf(use.fact('body.solid'), CELL_MM, cap ? toMm(use.fact('glue.height')) : Infinity);
    },
  }),
];
export default rule;

function shaped({ spec }: Subject, use: Use): Solid {
  return {
    outline: use.fact('outline.polygon'),
    heightMm: toMm(use.fact(`thickness.body.machined.${highestPoint(spec)}`)),
    top: use.fact('face.top'),
    back: use.fact('face.back'),
    voids: [],
  };
}
