/** Nothing retired is used. */
import type { Leaf } from '../../facts/leaf.ts';
import { leavesOf } from '../../facts/leaves.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { cutterInstead } from '../cutter-instead.ts';
import { retiredOf } from '../retired.ts';

const check: Check = {
  id: 'row-retired',
  stage: 'spec',
  severity: 'error',
  why: 'The card would send people to something that has been taken away, and they would use the next best.',
  mend: 'Name another row, or take the date out of the plant if it is back in use.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'title: End mill 8\n',
    fails: 'title: End mill 8\n    retired: 2026-01-05\n',
  },
  run: (bench) => leavesOf(bench.subject.spec).flatMap((leaf) => fault(bench, leaf)),
};
export default check;

function fault(bench: Bench, leaf: Leaf<unknown>): Fault[] {
  const { subject, facts, on } = bench;
  const retired = retiredOf(subject, facts, leaf);
  if (!retired) return [];
  const name = String(facts.peek(leaf));
  // Both are put on record: the finding stands at the name, and shows the row.
  const seen = look(facts, (use) => ({ name: use(leaf), from: use(retired) }));
  if (!seen || seen.from > on) return [];
  const instead = leaf.asked.refers === 'plant.cutters' ? cutterInstead(bench, leaf as Leaf<string>) : undefined;
  return [
    {
      at: leaf.id,
      what: `"${name}" has been retired since ${seen.from}.`,
      mend: `${instead ? `Name ${instead}, the nearest in use that would do` : 'Name another one'}, or take the date out of the plant if it is back in use.`,
      against: [{ at: retired.id, text: 'the day it was retired' }],
      cause: retired.id,
    },
  ];
}
