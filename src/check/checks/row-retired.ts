/** Nothing retired is used. */
import { Leaf } from '../../facts/leaf.ts';
import { leavesOf } from '../../facts/leaves.ts';
import type { Subject } from '../../facts/subject.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { cutterInstead } from '../cutter-instead.ts';

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
  const table = leaf.asked.refers;
  if (table === undefined || !table.startsWith('plant.')) return [];
  const name = String(facts.peek(leaf));
  const retired = rowOf(subject, table, name)?.retired;
  if (!(retired instanceof Leaf)) return [];
  // Both are put on record: the finding stands at the name, and shows the row.
  const seen = look(facts, (use) => ({ name: use(leaf), from: use(retired as Leaf<string>) }));
  if (!seen || seen.from > on) return [];
  const instead = table === 'plant.cutters' ? cutterInstead(bench, leaf as Leaf<string>) : undefined;
  return [
    {
      at: leaf.id,
      what: `"${name}" is retired since ${seen.from}.`,
      mend: `${instead ? `Name ${instead}, the nearest in use that would do` : 'Name another one'}, or take the date out of the plant if it is back in use.`,
      against: [{ at: retired.id, text: 'retired here' }],
    },
  ];
}

function rowOf({ plant }: Subject, table: string, name: string): { readonly retired?: unknown } | undefined {
  const rows = (plant as unknown as Record<string, Record<string, { retired?: unknown }>>)[
    table.slice('plant.'.length)
  ];
  return rows && Object.hasOwn(rows, name) ? rows[name] : undefined;
}
