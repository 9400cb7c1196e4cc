/** What was measured at a station lies far enough inside the limits. */
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { sayAs, sayFact } from '../say.ts';
import { bell, plan, ring } from '../sketch.ts';

const check: Check = {
  id: 'not-capable',
  stage: 'derived',
  severity: 'caution',
  why: 'The station makes pieces that are out, and more of them than anybody plans for: each is found late or not at all.',
  mend: 'Set the station to the middle of its limits, find what makes it spread, or widen the limits where the body allows it.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'cap: { sized: 16.40 ±0.10 }',
    fails: 'cap: { sized: 16.40 ±0.05 }',
  },
  sketch: plan(bell(0, 8), ring(15, 10, 4)),
  run: (bench) => [...bench.subject.readings.keys()].flatMap((fact) => fault(bench, fact)),
};
export default check;

function fault({ subject, facts }: Bench, fact: string): Fault[] {
  const id = `measured.${fact}` as const;
  if (!facts.has(id)) return [];
  const seen = look(facts, (use) => ({
    summary: use.fact(id),
    least: use(subject.plant.plant!.capability!.least),
    taken: use(subject.readings.get(fact)!),
  }));
  const cpk = seen?.summary.capability?.cpk;
  if (!seen || !cpk || cpk.value >= seen.least.value) return [];
  const { count, mean } = seen.summary;
  const deviation = seen.summary.deviation!;
  const { from, to } = seen.taken;
  return [
    {
      at: `readings.${fact}`,
      what: `${sayAs(count, count.value)} readings of ${sayFact(facts, fact)} from ${from} to ${to}: mean ${sayAs(mean, mean.value)}, standard deviation ${sayAs(deviation, deviation.value)}, so Cpk is ${sayAs(cpk, cpk.value)}. The plant asks for at least ${sayAs(seen.least, seen.least.value)}.`,
      mend: `A spread ${sayAs(cpk, seen.least.value / cpk.value, 1)} times smaller would do, or limits as much wider, or a mean nearer to their middle.`,
      against: [
        { at: fact, text: 'its limits' },
        { at: 'plant.plant.capability.least', text: 'what the plant asks for' },
      ],
    },
  ];
}
