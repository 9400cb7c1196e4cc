/** The planer: how much off each face, in how many passes, and the marks its knives leave. */
import type { Use } from '../../facts/facts.ts';
import { practice, publishedIn } from '../../facts/facts.ts';
import type { Leaf } from '../../facts/leaf.ts';
import type { Part } from '../../facts/parts.ts';
import { partsOf } from '../../facts/parts.ts';
import { machineNumber } from '../../facts/station-machine.ts';
import type { Subject } from '../../facts/subject.ts';
import { scale } from '../../units/arithmetic.ts';
import type { Length, Quantity } from '../../units/quantity.ts';
import { NM_PER_M } from '../lengths.ts';
import { passesFor } from '../passes.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';

declare module '../../facts/facts.ts' {
  interface DerivedFacts
    extends Record<`planing.${Part}.cut`, Length>, Record<`planing.${Part}.passes`, Quantity<'count'>> {
    'planing.knife-pitch': Length;
    'planing.knife-depth': Length;
  }
}

const S_PER_MIN = 60;
const knives = publishedIn('knife marks of a cutter head: arcs of the knife circle, a feed apart (textbook)');

const rule: Rule = (subject) => [
  ...partsOf(subject.spec).flatMap((part) => [
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
      value: (use) => {
        const cut = use.fact(`planing.${part}.cut`);
        return passesFor(cut.high ?? cut.value, use(machineNumber(subject.plant, use, 'planing', 'cut-per-pass')));
      },
    }),
  ]),
  ...marks(subject),
];
export default rule;

function marks({ plant }: Subject) {
  const machine = (use: Use, key: 'feed-speed' | 'rotation' | 'knives' | 'head'): number =>
    use(machineNumber(plant, use, 'planing', key) as Leaf<Quantity>).value;
  return [
    derivation({
      id: 'planing.knife-pitch',
      label: 'distance of the knife marks of the planer',
      formula: 'feed speed ÷ (turns × knives)',
      source: knives,
      value: (use) => {
        const perTurnM = (machine(use, 'feed-speed') * S_PER_MIN) / machine(use, 'rotation');
        return { kind: 'length', value: (perTurnM / machine(use, 'knives')) * NM_PER_M, unit: 'mm', decimals: 2 };
      },
    }),
    derivation({
      id: 'planing.knife-depth',
      label: 'depth of the knife marks of the planer',
      formula: 'pitch² ÷ (4 × diameter of the head)',
      source: knives,
      value: (use) => ({
        kind: 'length',
        value: use.fact('planing.knife-pitch').value ** 2 / (4 * machine(use, 'head')),
        unit: 'mm',
        decimals: 4,
      }),
    }),
  ];
}
