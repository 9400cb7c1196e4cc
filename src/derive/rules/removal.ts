/** What each stage takes off, least and most, and the least it must take off to clean up. */
import type { Use } from '../../facts/facts.ts';
import { practice } from '../../facts/facts.ts';
import type { Leaf } from '../../facts/leaf.ts';
import type { BodyPoint, Part } from '../../facts/parts.ts';
import { facesBack, highestPoint, partsOf, pointsOf } from '../../facts/parts.ts';
import { row, wanted } from '../../facts/row.ts';
import type { Subject } from '../../facts/subject.ts';
import { add, subtract } from '../../units/arithmetic.ts';
import type { Length } from '../../units/quantity.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';

type Step = `part.${Part}.${'planed' | 'sized'}` | 'body.back-faced' | 'body.machined' | `body.white.${BodyPoint}`;

declare module '../../facts/facts.ts' {
  interface DerivedFacts extends Record<`removal.${Step}` | `least-removal.${Step}`, Length> {}
}

const rule: Rule = (subject) => [
  ...partsOf(subject.spec).flatMap((part) => [
    ...removal(subject, `part.${part}.planed`, {
      before: (use) => use.fact(`thickness.part.${part}.rough`),
      after: (use) => use.fact(`thickness.part.${part}.planed`),
      least: (line, id) => wanted(line[part], `${id}.${part}`).rough['least-removal'],
    }),
    ...removal(subject, `part.${part}.sized`, {
      before: (use) => use.fact(`thickness.part.${part}.planed`),
      after: (use) => use.fact(`thickness.part.${part}.sized`),
      least: (line, id) => wanted(line[part], `${id}.${part}`).planed['least-removal'],
    }),
  ]),
  ...body(subject),
];
export default rule;

function body(subject: Subject) {
  const { spec } = subject;
  const faced = facesBack(spec);
  const point = highestPoint(spec);
  const whites = pointsOf(spec, 'white').filter((at) => pointsOf(spec, 'machined').includes(at));
  return [
    ...(faced
      ? removal(subject, 'body.back-faced', {
          before: (use) => use.fact('thickness.blank'),
          after: (use) => use.fact('thickness.body.back-faced'),
          least: (line) => line.blank,
        })
      : []),
    ...removal(subject, 'body.machined', {
      before: (use) => use.fact(faced ? 'thickness.body.back-faced' : 'thickness.blank'),
      after: (use) => use.fact(`thickness.body.machined.${point}`),
      least: (line) => line['back-faced'],
    }),
    ...whites.flatMap((at) =>
      removal(subject, `body.white.${at}`, {
        before: (use) => use.fact(`thickness.body.machined.${at}`),
        after: (use) => use.fact(`thickness.body.white.${at}`),
        least: (line) => line.machined,
      }),
    ),
  ];
}

interface Removal {
  readonly before: (use: Use) => Length;
  readonly after: (use: Use) => Length;
  readonly least: (line: Line, id: string) => { flatness: Leaf<Length>; marks: Leaf<Length>; floor: Leaf<Length> };
}
type Line = NonNullable<Subject['plant']['lines']>[string];

function removal({ spec, plant }: Subject, step: Step, { before, after, least }: Removal) {
  return [
    derivation({
      id: `removal.${step}`,
      label: `taken off: ${step.replace(/\./g, ' ')}`,
      formula: 'before − after; limits are the least and the most',
      source: practice('stage chain; common practice, no source'),
      value: (use) => subtract(before(use), after(use)),
    }),
    derivation({
      id: `least-removal.${step}`,
      label: `must be taken off at least: ${step.replace(/\./g, ' ')}`,
      formula: 'flatness + depth of marks + floor of the line',
      source: practice('a cut must clear the bow and the marks of the one before; common practice, no source'),
      value: (use) => {
        const name = use(spec.line);
        const { flatness, marks, floor } = least(row(plant.lines, name, 'plant.lines'), `plant.lines.${name}`);
        return add(use(flatness), use(marks), use(floor));
      },
    }),
  ];
}
