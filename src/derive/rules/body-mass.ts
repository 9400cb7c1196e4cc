/** Volume, mass and centre of mass of the machined body. */
import type { Use } from '../../facts/facts.ts';
import { byDefinition } from '../../facts/facts.ts';
import { partsOf } from '../../facts/parts.ts';
import type { Subject } from '../../facts/subject.ts';
import type { Field } from '../../geometry/solid/field.ts';
import { fieldOf } from '../../geometry/solid/field.ts';
import type { Pocket } from '../../geometry/solid/solid.ts';
import { level } from '../../geometry/solid/solid.ts';
import type { Length, Quantity } from '../../units/quantity.ts';
import { lengthOfMm, toMm } from '../lengths.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';
import { surfaceHeight } from '../surfaces.ts';

declare module '../../facts/facts.ts' {
  interface DerivedFacts extends Record<`body.balance.${'x' | 'y'}`, Length> {
    'body.volume': Quantity<'volume'>;
    /** z of the glue face over the machined back. */
    'glue.height': Length;
    'body.cap-field': Field;
    'body.mass': Quantity<'mass'>;
  }
}

const MM3_PER_M3 = 1e9;

const rule: Rule = (subject) => [
  derivation({
    id: 'body.volume',
    label: 'volume of the machined body',
    formula: 'wood over each cell of 1 mm × area of the cell inside the outline; true to 0.1 %',
    source: byDefinition,
    value: (use) => volumeOf(use.fact('body.field').volumeMm3),
  }),
  ...(partsOf(subject.spec).includes('cap')
    ? [
        derivation({
          id: 'glue.height',
          label: 'glue face over the machined back',
          formula: 'thickness of the back as sized less what facing takes off',
          source: byDefinition,
          value: (use) => surfaceHeight(subject, use, 'glue-face'),
        }),
        derivation({
          id: 'body.cap-field',
          label: 'cap of the machined body on a grid',
          formula: 'the body less all that lies below the glue face',
          source: byDefinition,
          value: capField,
        }),
      ]
    : []),
  derivation({
    id: 'body.mass',
    label: 'mass of the machined body',
    formula: 'volume of each part × its density; a guide, for boards differ by a tenth',
    source: byDefinition,
    value: (use) => ({ kind: 'mass', value: massesOf(subject, use).kg, unit: 'kg', decimals: 1 }),
  }),
  ...(['x', 'y'] as const).map((axis, i) =>
    derivation({
      id: `body.balance.${axis}`,
      label: `centre of mass, ${axis}`,
      formula: 'moments of each part’s volume × its density ÷ mass',
      source: byDefinition,
      value: (use) => {
        const { kg, moment } = massesOf(subject, use);
        return lengthOfMm(moment[i]! / kg, 0);
      },
    }),
  ),
];
export default rule;

const volumeOf = (mm3: number): Quantity<'volume'> => ({
  kind: 'volume',
  value: mm3 / MM3_PER_M3,
  unit: 'cm³',
  decimals: 0,
});

function capField(use: Use): Field {
  const solid = use.fact('body.solid');
  const back: Pocket = {
    kind: 'pocket',
    id: 'back',
    region: [solid.outline],
    opens: 'back',
    floor: level(toMm(use.fact('glue.height'))),
    roofMm: undefined,
  };
  return fieldOf({ ...solid, voids: [...solid.voids, back] });
}

/** kg, and kg·mm along x and y. */
function massesOf({ spec }: Subject, use: Use): { kg: number; moment: readonly [number, number] } {
  const whole = use.fact('body.field');
  const parts = partsOf(spec);
  if (parts[0] === 'slab') return weighed(use.fact('density.slab').value, whole.volumeMm3, whole.momentMm4);
  const cap = use.fact('body.cap-field');
  const own = weighed(use.fact('density.cap').value, cap.volumeMm3, cap.momentMm4);
  const less = (i: 0 | 1) => whole.momentMm4[i] - cap.momentMm4[i];
  const back = weighed(use.fact('density.back').value, whole.volumeMm3 - cap.volumeMm3, [less(0), less(1)]);
  return { kg: own.kg + back.kg, moment: [own.moment[0] + back.moment[0], own.moment[1] + back.moment[1]] };
}

function weighed(density: number, mm3: number, [x, y]: readonly [number, number, ...number[]]) {
  const factor = density / MM3_PER_M3;
  return { kg: mm3 * factor, moment: [x * factor, y * factor] as const };
}
