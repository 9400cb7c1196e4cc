/** Areas and perimeters: of the outline, of every cavity, and of the joint of cap and back that is really glued. */
import { byDefinition } from '../../facts/facts.ts';
import type { Use } from '../../facts/facts.ts';
import { hole } from '../../facts/leaf.ts';
import { namesOf } from '../../facts/row.ts';
import type { Subject } from '../../facts/subject.ts';
import { perimeter, regionArea, regionCentroid } from '../../geometry/measure.ts';
import { difference } from '../../geometry/offset.ts';
import type { Polygon, Region } from '../../geometry/polygon.ts';
import type { Length, Quantity } from '../../units/quantity.ts';
import { lengthOfMm } from '../lengths.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';

declare module '../../facts/facts.ts' {
  interface DerivedFacts {
    'outline.area': Quantity<'area'>;
    'outline.perimeter': Length;
    [id: `cavity.${string}.area`]: Quantity<'area'>;
    [id: `cavity.${string}.perimeter`]: Length;
    'joint.glued': Region;
    'joint.area': Quantity<'area'>;
    /** Middle of the joint, from the centreline and from the bridge line. */
    'joint.centre.x': Length;
    'joint.centre.y': Length;
  }
}

const MM2_PER_M2 = 1e6;

const rule: Rule = (subject) => [
  derivation({
    id: 'outline.area',
    label: 'area inside the outline',
    formula: 'area of the polygon',
    source: byDefinition,
    value: (use) => ({
      kind: 'area',
      value: regionArea([use.fact('outline.polygon')]) / MM2_PER_M2,
      unit: 'm²',
      decimals: 3,
    }),
  }),
  derivation({
    id: 'outline.perimeter',
    label: 'length round the outline',
    formula: 'perimeter of the polygon',
    source: byDefinition,
    value: (use) => lengthOfMm(perimeter(use.fact('outline.polygon')), 0),
  }),
  ...namesOf(subject.spec.cavities).flatMap((id) => [
    derivation({
      id: `cavity.${id}.area`,
      label: `cavity ${id}: area`,
      formula: 'area of the polygon',
      source: byDefinition,
      value: (use) => ({
        kind: 'area',
        value: regionArea([drawnOf(use, id)]) / MM2_PER_M2,
        unit: 'cm²',
        decimals: 1,
      }),
    }),
    derivation({
      id: `cavity.${id}.perimeter`,
      label: `cavity ${id}: length round it`,
      formula: 'perimeter of the polygon',
      source: byDefinition,
      value: (use) => lengthOfMm(perimeter(drawnOf(use, id)), 0),
    }),
  ]),
  ...(subject.spec.timber?.cap
    ? [
        derivation({
          id: 'joint.glued',
          label: 'joint of cap and back: what is glued',
          formula: 'inside the rough line less the cavities cut into the glue face',
          source: byDefinition,
          value: (use) => glued(subject, use),
        }),
        derivation({
          id: 'joint.area',
          label: 'joint of cap and back: area that is glued',
          formula: 'area inside the rough line less the cavities cut into the glue face',
          source: byDefinition,
          value: (use) => ({
            kind: 'area',
            value: regionArea(use.fact('joint.glued')) / MM2_PER_M2,
            unit: 'm²',
            decimals: 3,
          }),
        }),
        ...(['x', 'y'] as const).map((axis) =>
          derivation({
            id: `joint.centre.${axis}`,
            label: `joint of cap and back: middle of what is glued, ${axis}`,
            formula: 'centre of area of what is glued, cavities of the glue face left out',
            source: byDefinition,
            value: (use) => lengthOfMm(regionCentroid(use.fact('joint.glued'))![axis], 0),
          }),
        ),
      ]
    : []),
];
export default rule;

function drawnOf(use: Use, id: string): Polygon {
  const drawn = use.fact(`cavity.${id}.drawn`);
  return drawn.ok ? drawn.polygon : use(hole(`cavities.${id}.shape`));
}

function glued({ spec }: Subject, use: Use): Region {
  const chambers = namesOf(spec.cavities).filter((id) => use(spec.cavities![id]!.setup) === 'glue-face');
  return difference(
    [use.fact('saw.rough.line')],
    chambers.map((id) => drawnOf(use, id)),
  );
}
