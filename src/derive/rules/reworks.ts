/**
 * How thin a piece may be and still go on: its low limit, less what the plant lets pass. And what would then be left for the
 * next cut: it must still find wood everywhere.
 */
import { practice } from '../../facts/facts.ts';
import type { Use } from '../../facts/facts.ts';
import type { Part } from '../../facts/parts.ts';
import { facesBack, highestPoint, partsOf, pointsOf } from '../../facts/parts.ts';
import type { ReworkRow, ReworkThing } from '../../facts/reworks.ts';
import { reworkOf } from '../../facts/reworks.ts';
import { namesOf, readable, wanted } from '../../facts/row.ts';
import type { Subject } from '../../facts/subject.ts';
import { nominal } from '../../units/arithmetic.ts';
import type { Length } from '../../units/quantity.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';

declare module '../../facts/facts.ts' {
  interface DerivedFacts {
    [id: `rework.${string}.floor`]: Length;
    [id: `rework.${string}.left-to-cut`]: Length;
    [id: `rework.${string}.least-to-cut`]: Length;
  }
}

/** What is measured at a station, and what the next cut takes off it. */
interface Measured {
  readonly thing: ReworkThing;
  readonly thickness: (use: Use) => Length;
  readonly next: Removal;
}

type Removal = `part.${Part}.sized` | 'body.back-faced' | 'body.machined' | `body.white.${string}`;

const rule: Rule = (subject) =>
  namesOf(subject.plant.reworks).flatMap((id) => {
    const row = subject.plant.reworks![id]!;
    // Form alone decides which facts there are: the words a row is made of stand in the file.
    if (row.out.text !== 'thin' || row.beyond === undefined) return [];
    return readable(row.at).flatMap((at) =>
      measuredAt(subject, at.text).flatMap((one) => floor(id, row, at.text, one)),
    );
  });
export default rule;

function floor(id: string, row: ReworkRow, station: string, { thing, thickness, next }: Measured) {
  const name = reworkOf(id, station, thing);
  const beyond = (use: Use) => use(wanted(row.beyond, `plant.reworks.${id}.beyond`)).value;
  return [
    derivation({
      id: `${name}.floor`,
      label: `${thing} too thin at ${station}: as far down as the plant goes on`,
      formula: 'low limit − how far past it at most',
      source: practice('common practice, no source'),
      value: (use) => {
        const q = thickness(use);
        return { ...nominal(q), value: (q.low ?? q.value) - beyond(use) };
      },
    }),
    derivation({
      id: `${name}.left-to-cut`,
      label: `${thing} as thin as that: what the next cut finds at least`,
      formula: 'least removal of the next stage − how far past the limit',
      source: practice('tolerance chain, worst case: textbook stack'),
      value: (use) => {
        const q = use.fact(`removal.${next as 'body.machined'}`);
        return { ...nominal(q), value: (q.low ?? q.value) - beyond(use) };
      },
    }),
    derivation({
      id: `${name}.least-to-cut`,
      label: `what the next cut after ${station} must take off at least`,
      formula: 'flatness, marks and floor of the line',
      source: practice('common practice, no source'),
      value: (use) => use.fact(`least-removal.${next as 'body.machined'}`),
    }),
  ];
}

function measuredAt({ spec }: Subject, station: string): readonly Measured[] {
  const parts = partsOf(spec);
  const afterPress: Removal = facesBack(spec) ? 'body.back-faced' : 'body.machined';
  if (station === 'planing') {
    return parts.map((part) => ({
      thing: part,
      thickness: (use) => use.fact(`thickness.part.${part}.planed`),
      next: `part.${part}.sized`,
    }));
  }
  if (station === 'sizing') {
    return parts.map((part) => ({
      thing: part,
      thickness: (use) => use.fact(`thickness.part.${part}.sized`),
      next: afterPress,
    }));
  }
  if (station === 'press')
    return [{ thing: 'blank', thickness: (use) => use.fact('thickness.blank'), next: afterPress }];
  if (station === 'machining-back' && facesBack(spec)) {
    return [{ thing: 'faced', thickness: (use) => use.fact('thickness.body.back-faced'), next: 'body.machined' }];
  }
  const white = pointsOf(spec, 'white').find((at) => at === highestPoint(spec));
  if (station !== 'machining-top' || !white) return [];
  return [
    {
      thing: 'machined',
      thickness: (use) => use.fact(`thickness.body.machined.${white}`),
      next: `body.white.${white}`,
    },
  ];
}
