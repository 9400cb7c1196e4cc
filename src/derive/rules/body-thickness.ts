/** Thickness of the body after each stage, at each named point: as given. */
import { byDefinition } from '../../facts/facts.ts';
import type { BodyPoint } from '../../facts/parts.ts';
import { facesBack, pointsOf } from '../../facts/parts.ts';
import { present, wanted } from '../../facts/row.ts';
import type { ModelSpec } from '../../facts/spec.generated.ts';
import type { Length } from '../../units/quantity.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';

type Stage = 'machined' | 'white' | 'coated';

declare module '../../facts/facts.ts' {
  interface DerivedFacts extends Record<`thickness.body.${'back-faced' | `${Stage}.${BodyPoint}`}`, Length> {}
}

const stages: readonly Stage[] = ['machined', 'white', 'coated'];

/** Of a white body that is left out, those of the machined one: who asks for it is told what is missing, not that it is unknown. */
const pointsAt = (spec: ModelSpec, stage: Stage): readonly BodyPoint[] =>
  stage === 'white' && present(present(present(spec.stages)?.body)?.white) === undefined
    ? pointsOf(spec, 'machined')
    : pointsOf(spec, stage);

const asGiven = { formula: 'as given', source: byDefinition };

const rule: Rule = ({ spec }) => [
  ...(facesBack(spec)
    ? [
        derivation({
          id: 'thickness.body.back-faced',
          label: 'body, back faced',
          ...asGiven,
          value: (use) => use(wanted(spec.stages.body['back-faced'], 'stages.body.back-faced')),
        }),
      ]
    : []),
  ...stages.flatMap((stage) =>
    pointsAt(spec, stage).map((point) =>
      derivation({
        id: `thickness.body.${stage}.${point}`,
        label: `body, ${stage}, at the ${point}`,
        ...asGiven,
        value: (use) => use(wanted(spec.stages.body[stage]?.[point], `stages.body.${stage}.${point}`)),
      }),
    ),
  ),
];
export default rule;
