/** Cuts a face at the planer and passes at the wide belt. */
import type { Use } from '../../facts/facts.ts';
import { practice } from '../../facts/facts.ts';
import type { Part } from '../../facts/parts.ts';
import { partsOf } from '../../facts/parts.ts';
import { row, wanted } from '../../facts/row.ts';
import type { Subject } from '../../facts/subject.ts';
import { scale } from '../../units/arithmetic.ts';
import type { Length, Quantity } from '../../units/quantity.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';

declare module '../../facts/facts.ts' {
  interface DerivedFacts
    extends
      Record<`planing.${Part}.cut`, Length>,
      Record<`${'planing' | 'sizing'}.${Part}.passes`, Quantity<'count'>> {}
}

const rule: Rule = (subject) =>
  partsOf(subject.spec).flatMap((part) => [
    derivation({
      id: `planing.${part}.cut`,
      label: `${part}: planed off each face`,
      formula: 'half of what planing takes off; limits are the least and the most',
      source: practice('a light cut off each face so that both clean up; common practice, no source'),
      value: (use) => scale(use.fact(`removal.part.${part}.planed`), 0.5),
    }),
    derivation({
      id: `planing.${part}.passes`,
      label: `${part}: passes at the planer`,
      formula: 'most taken off a face ÷ most the machine takes in one pass, rounded up; both faces in one pass',
      source: practice('double-sided planer; common practice, no source'),
      value: (use) => passes(use.fact(`planing.${part}.cut`), perPass(subject, use, 'planing')),
    }),
    derivation({
      id: `sizing.${part}.passes`,
      label: `${part}: passes at the wide belt`,
      formula: 'most taken off ÷ most the machine takes in one pass, rounded up',
      source: practice('common practice, no source'),
      value: (use) => passes(use.fact(`removal.part.${part}.sized`), perPass(subject, use, 'sizing')),
    }),
  ]);
export default rule;

function perPass({ plant }: Subject, use: Use, station: string): Length {
  const machine = use(
    wanted(row(plant.stations, station, 'plant.stations').machine, `plant.stations.${station}.machine`),
  );
  const limit = row(plant.machines, machine, 'plant.machines')['cut-per-pass'];
  return use(wanted(limit, `plant.machines.${machine}.cut-per-pass`));
}

const passes = (cut: Length, most: Length): Quantity<'count'> => ({
  kind: 'count',
  value: Math.max(1, Math.ceil((cut.high ?? cut.value) / (most.low ?? most.value))),
  unit: '',
  decimals: 0,
});
