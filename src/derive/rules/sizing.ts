/** The wide belt: passes with each of its belts, coarse to fine. */
import type { Use } from '../../facts/facts.ts';
import { practice } from '../../facts/facts.ts';
import type { Part } from '../../facts/parts.ts';
import { partsOf } from '../../facts/parts.ts';
import { namesOf } from '../../facts/row.ts';
import { machineAt, machineNumber } from '../../facts/station-machine.ts';
import type { Subject } from '../../facts/subject.ts';
import type { Quantity } from '../../units/quantity.ts';
import { passesFor } from '../passes.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';

declare module '../../facts/facts.ts' {
  interface DerivedFacts extends Record<`sizing.${Part}.passes`, Quantity<'count'>> {
    /** Ids of the belts, coarse to fine; none where the machine's row names no belts. */
    'sizing.belts': readonly string[];
    [id: `sizing.${string}.belt.${string}`]: Quantity<'count'>;
    'sizing.last-grit': Quantity<'count'>;
  }
}

const source = practice(
  'the finest belts make one pass each, the coarsest what they leave to it; common practice, no source',
);

const rule: Rule = (subject) => [
  derivation({
    id: 'sizing.belts',
    label: 'belts of the wide belt, coarse to fine',
    formula: 'in the order of their grit',
    source,
    value: (use) => {
      const belts = machineAt(subject.plant, use, 'sizing').grits ?? {};
      return namesOf(belts).toSorted((a, b) => use(belts[a]!.grit).value - use(belts[b]!.grit).value);
    },
  }),
  derivation({
    id: 'sizing.last-grit',
    label: 'grit of the last belt',
    formula: 'the finest',
    source,
    value: (use) => {
      const last = use.fact('sizing.belts').at(-1)!;
      return use(machineNumber(subject.plant, use, 'sizing', 'grits')[last]!.grit);
    },
  }),
  ...partsOf(subject.spec).flatMap((part) => [
    ...beltsOf(subject).map((belt) =>
      derivation({
        id: `sizing.${part}.belt.${belt}`,
        label: `${part}: passes with the belt ${belt}`,
        formula:
          'of the coarsest: (most taken off − one pass of each finer one) ÷ most it takes, rounded up; of the others: one',
        source,
        value: (use) => passesOf(subject, use, part, belt),
      }),
    ),
    derivation({
      id: `sizing.${part}.passes`,
      label: `${part}: passes at the wide belt`,
      formula: 'sum of the passes of its belts; without belts most taken off ÷ most the machine takes, rounded up',
      source,
      value: (use) => {
        const belts = use.fact('sizing.belts');
        if (belts.length === 0)
          return passesFor(most(use, part), use(machineNumber(subject.plant, use, 'sizing', 'cut-per-pass')));
        const sum = belts.reduce((passes, belt) => passes + use.fact(`sizing.${part}.belt.${belt}`).value, 0);
        return { kind: 'count', value: sum, unit: '', decimals: 0 };
      },
    }),
  ]),
];
export default rule;

function most(use: Use, part: Part): number {
  const removal = use.fact(`removal.part.${part}.sized`);
  return removal.high ?? removal.value;
}

function passesOf({ plant }: Subject, use: Use, part: Part, belt: string): Quantity<'count'> {
  const belts = machineNumber(plant, use, 'sizing', 'grits');
  const [coarsest, ...finer] = use.fact('sizing.belts');
  const perPass = (id: string) => use(belts[id]!['cut-per-pass']);
  if (belt !== coarsest) return passesFor(0, perPass(belt));
  const left = most(use, part) - finer.reduce((sum, id) => sum + perPass(id).value, 0);
  return passesFor(left, perPass(belt), finer.length > 0 ? 0 : 1);
}

/** Every belt of any wide belt of the plant, so that a fact exists for each; which of them run is read when it is asked for. */
const beltsOf = ({ plant }: Subject): readonly string[] => [
  ...new Set(namesOf(plant.machines).flatMap((id) => namesOf(plant.machines![id]!.grits))),
];
