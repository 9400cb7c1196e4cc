/** Readings are of something that is measured at that station, with limits. */
import { leavesOf } from '../../facts/leaves.ts';
import { offer } from '../../findings/nearest.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';

const check: Check = {
  id: 'reading-of-nothing',
  stage: 'card',
  severity: 'caution',
  why: 'A column of readings under a wrong name counts for nothing, and nobody misses it.',
  mend: 'Write the name as the chart form of that station prints it.',
  example: {
    file: 'models/readings/sizing.csv',
    passes: 'thickness.part.cap.sized,first,16.40',
    fails: 'thickness.part.cap.size,first,16.40',
  },
  run: (bench) => [...bench.subject.readings.values()].flatMap((leaf) => fault(bench, leaf)),
};
export default check;

type ReadingsLeaf = Bench['subject']['readings'] extends ReadonlyMap<string, infer L> ? L : never;

function fault({ subject, facts, seen }: Bench, leaf: ReadingsLeaf): Fault[] {
  const readings = look(facts, (use) => use(leaf));
  if (!readings) return [];
  const { fact, station } = readings;
  const ofPlant = fact.startsWith('plant.');
  const there = ofPlant
    ? leavesOf(subject.plant).map(({ id }) => id)
    : (seen.find((card) => card.station === station)?.readings.map((one) => one.fact) ?? []);
  if (there.includes(fact)) return [];
  const where = ofPlant ? 'the plant has no such number' : `nothing of that name has limits on the card of ${station}`;
  return [{ at: leaf.id, what: `These readings are of "${fact}": ${where}.`, mend: offer(fact, there), against: [] }];
}
