/** Which operation opens a cavity of the back to the top: from then on the vacuum under the body draws air. */
import type { Use } from '../../facts/facts.ts';
import { byDefinition } from '../../facts/facts.ts';
import type { Cut, CutId } from '../../facts/cuts.ts';
import { cutId, pairsOf } from '../../facts/cuts.ts';
import type { SetupId } from '../../facts/cutting-order.ts';
import type { Subject } from '../../facts/subject.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';
import { setupOf } from '../surfaces.ts';

export interface Opening {
  /** Cut with the top up. */
  readonly by: CutId;
  /** What it opens, in the back. */
  readonly into: CutId;
}

declare module '../../facts/facts.ts' {
  interface DerivedFacts {
    'vacuum.opened': readonly Opening[];
  }
}

const rule: Rule = (subject) => [
  derivation({
    id: 'vacuum.opened',
    label: 'cuts of the top that open one of the back',
    formula: 'cuts of the second set-up that meet what opens to the back',
    source: byDefinition,
    value: (use) => pairsOf(subject.spec).flatMap(({ a, b, left }) => opening(subject, use, { a, b, left })),
  }),
];
export default rule;

function opening(
  subject: Subject,
  use: Use,
  { a, b, left }: { readonly a: Cut; readonly b: Cut; readonly left: `left.${string}` },
): readonly Opening[] {
  const up = (cut: Cut) => use(setupOf(subject.spec, use(cut.spec.setup) as SetupId).up);
  const [by, into] = up(a) === 'top' ? [a, b] : [b, a];
  if (up(by) !== 'top' || up(into) !== 'back') return [];
  const wood = use.fact(left);
  return wood && wood.wood.value < 0 ? [{ by: cutId(by), into: cutId(into) }] : [];
}
