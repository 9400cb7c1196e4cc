/** How far the body's stages may be off at worst: what their set-ups hold. */
import { practice } from '../../facts/facts.ts';
import type { Use } from '../../facts/facts.ts';
import type { BodyPoint } from '../../facts/parts.ts';
import { facesBack, pointsOf } from '../../facts/parts.ts';
import type { Subject } from '../../facts/subject.ts';
import { withCauses } from '../../units/arithmetic.ts';
import type { Length } from '../../units/quantity.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';

import type { SetupId } from '../../facts/cutting-order.ts';
import { causesApart, cutError, setupOf, surfaceOf, zeroOf } from '../surfaces.ts';

type Stage = 'back-faced' | `machined.${BodyPoint}`;

declare module '../../facts/facts.ts' {
  interface DerivedFacts extends Record<`thickness.body.${Stage}.achieved`, Length> {}
}

const rule: Rule = (subject) => [
  ...(facesBack(subject.spec) ? [achieved(subject, 'back-faced', 'back')] : []),
  ...pointsOf(subject.spec, 'machined').map((point) => achieved(subject, `machined.${point}`, 'top')),
];
export default rule;

function achieved(subject: Subject, stage: Stage, setup: SetupId) {
  return derivation({
    id: `thickness.body.${stage}.achieved`,
    label: `body, ${stage.replace('.', ' at the ')}: what its set-up holds at worst`,
    formula: 'error of the machine, and of the way from the zero to the surface the body rests on',
    source: practice('tolerance graph; common practice, no source'),
    value: (use) => withCauses(use.fact(`thickness.body.${stage}`), causes(subject, use, setup, stage)),
  });
}

function causes(subject: Subject, use: Use, setup: SetupId, stage: Stage) {
  const { spec } = subject;
  const zero = zeroOf(subject, use, setup);
  const rests = surfaceOf(spec, use(setupOf(spec, setup)['rests-on']));
  const way = zero === rests ? [] : causesApart(subject, use, zero, rests);
  return [...(cutError(subject, use, setup, stage).causes ?? []), ...way];
}
