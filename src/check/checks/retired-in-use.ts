/** No number of a card comes from a row of the plant that has been taken out of use: its machine, its glue, its tacks. */
import { Leaf } from '../../facts/leaf.ts';
import { leavesOf } from '../../facts/leaves.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { retiredOf } from '../retired.ts';

const check: Check = {
  id: 'retired-in-use',
  stage: 'card',
  severity: 'error',
  why: 'The station would be sent to a machine that stands still, or to a glue that is no longer bought, and take the next best.',
  mend: 'Name another row where this one is named, or take the date out of the plant if it is back in use.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'spreader: { title: Spreader,',
    fails: 'spreader: { title: Spreader, retired: 2026-01-05,',
  },
  // Gauges have a check of their own, and what the model itself names.
  run: (bench) =>
    leavesOf(bench.subject.plant)
      .filter(({ id, asked }) => asked.refers !== 'plant.gauges' && bench.facts.fact(id) !== undefined)
      .flatMap((leaf) => faults(bench, leaf)),
};
export default check;

function faults({ subject, facts, on }: Bench, leaf: Leaf<unknown>): Fault[] {
  const retired = retiredOf(subject, facts, leaf);
  if (!retired) return [];
  const from = look(facts, (use) => use(retired));
  if (from === undefined || from > on) return [];
  const name = String(facts.peek(leaf));
  return [
    {
      at: leaf.id,
      what: `"${name}" has been retired since ${from}, and is still used here.`,
      mend: 'Name another one here, or take the date out of the plant if it is back in use.',
      against: [{ at: retired.id, text: 'the day it was retired' }],
      cause: retired.id,
    },
  ];
}
