/** Plates that lie on a face, as they are drawn. */
import { byDefinition } from '../../facts/facts.ts';
import { namesOf } from '../../facts/row.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';
import { drawnAt } from './cut-outline.ts';
import type { Drawn } from './outline.ts';

declare module '../../facts/facts.ts' {
  interface DerivedFacts {
    [id: `cover.${string}.drawn`]: Drawn;
  }
}

const rule: Rule = (subject) =>
  namesOf(subject.spec.covers).map((id) =>
    derivation({
      id: `cover.${id}.drawn`,
      label: `cover ${id}: outline`,
      formula: 'shape placed by point and angle, chord error at most 0.01 mm; mirrored for the left hand',
      source: byDefinition,
      value: (use) => drawnAt(subject, use, subject.spec.covers![id]!, `covers.${id}`),
    }),
  );
export default rule;
