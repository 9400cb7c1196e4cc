/** Volume, mass and centre of mass of the machined body. */
import type { Use } from '../../facts/facts.ts';
import { byDefinition } from '../../facts/facts.ts';
import { partsOf } from '../../facts/parts.ts';
import type { Subject } from '../../facts/subject.ts';
import type { Length, Quantity } from '../../units/quantity.ts';
import { lengthOfMm } from '../lengths.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';
import { surfaceHeight } from '../surfaces.ts';

declare module '../../facts/facts.ts' {
  interface DerivedFacts extends Record<`body.balance.${'x' | 'y'}`, Length> {
    'body.volume': Quantity<'volume'>;
    /** z of the glue face over the machined back. */
    'glue.height': Length;
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

/** kg, and kg·mm along x and y. */
function massesOf({ spec }: Subject, use: Use): { kg: number; moment: readonly [number, number] } {
  const whole = use.fact('body.field');
  const parts = partsOf(spec);
  if (parts[0] === 'slab') return weighed(use.fact('density.slab').value, whole.volumeMm3, whole.momentMm4);
  const { below } = whole;
  const less = (i: 0 | 1) => whole.momentMm4[i] - below.momentMm4[i];
  const cap = weighed(use.fact('density.cap').value, whole.volumeMm3 - below.volumeMm3, [less(0), less(1)]);
  const back = weighed(use.fact('density.back').value, below.volumeMm3, below.momentMm4);
  return { kg: cap.kg + back.kg, moment: [cap.moment[0] + back.moment[0], cap.moment[1] + back.moment[1]] };
}

function weighed(density: number, mm3: number, [x, y]: readonly [number, number, ...number[]]) {
  const factor = density / MM3_PER_M3;
  return { kg: mm3 * factor, moment: [x * factor, y * factor] as const };
}
