/** Thickness of a part after each station: as given, or the next stage and the allowance over it. */
import { byDefinition, practice } from '../../facts/facts.ts';
import { Leaf } from '../../facts/leaf.ts';
import type { Part, PartStage } from '../../facts/parts.ts';
import { partStages, partsOf } from '../../facts/parts.ts';
import { present, row, wanted } from '../../facts/row.ts';
import type { Subject } from '../../facts/subject.ts';
import { add, nominal } from '../../units/arithmetic.ts';
import type { Length } from '../../units/quantity.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';

declare module '../../facts/facts.ts' {
  interface DerivedFacts extends Record<Id, Length> {}
}

type Id = `thickness.part.${Part}.${PartStage}`;

const rule: Rule = (subject) =>
  partsOf(subject.spec).flatMap((part) => partStages.map((stage) => thickness(subject, part, stage)));
export default rule;

function thickness({ spec, plant }: Subject, part: Part, stage: PartStage) {
  const id: Id = `thickness.part.${part}.${stage}`;
  const label = `${part}, ${stage}`;
  const given = present(spec.stages)?.[part]?.[stage];
  if (given instanceof Leaf) {
    return derivation({ id, label, formula: 'as given', source: byDefinition, value: (use) => use(given) });
  }
  const next = stage === 'rough' ? 'planed' : 'sized';
  if (stage === 'sized') {
    return derivation({
      id,
      label,
      formula: 'as given',
      source: byDefinition,
      value: (use) => use(wanted(given as Leaf<Length> | undefined, `stages.${part}.sized`)),
    });
  }
  return derivation({
    id,
    label,
    formula: `${next} nominal + allowance, with the limits of the allowance`,
    source: practice('stages are set backward from the sized part; common practice, no source'),
    value: (use) => {
      const line = row(plant.lines, use(spec.line), 'plant.lines');
      const allowance = given?.allowance ?? wanted(line[part], `plant.lines.${use(spec.line)}.${part}`)[stage].over;
      return add(use(allowance), nominal(use.fact(`thickness.part.${part}.${next}`)));
    },
  });
}
