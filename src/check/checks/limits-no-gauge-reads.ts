/** Every number with limits has a gauge that can be read against them. */
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import type { Reading } from '../../facts/card-seen.ts';
import type { Quantity } from '../../units/quantity.ts';
import { gaugesSeen } from '../gauges.ts';
import { say, sayFact } from '../say.ts';
import { graduation, limits, plan, ring } from '../sketch.ts';

const check: Check = {
  id: 'limits-no-gauge-reads',
  stage: 'card',
  severity: 'error',
  why: 'A gauge that shows two or three steps between in and out passes bad pieces and stops good ones.',
  mend: 'Name a finer gauge for this check, or widen the limits.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'caliper: { title: Caliper, reads: length, unit: mm, resolution: 0.01 mm,',
    fails: 'caliper: { title: Caliper, reads: length, unit: mm, resolution: 0.1 mm,',
  },
  sketch: plan(limits(-8), graduation(13), ring(0, 9.6, 3.4)),
  run: (bench) => {
    const rules = new Map(gaugesSeen(bench).map(({ at, gauge: { rule } }) => [at, rule.leastCounts ?? 0]));
    return bench.seen.flatMap(({ readings }) =>
      readings.flatMap((reading) => fault(bench, reading, rules.get(reading.gauge) ?? 0)),
    );
  },
};
export default check;

/** `least`: of its steps inside the limits; fewer, and the gauge says nothing about a piece. */
function fault({ facts }: Bench, { fact, gauge, counts, why }: Reading, least: number): Fault[] {
  if (counts >= least && why === undefined) return [];
  const q = look(facts, () => facts.fact(fact)?.state);
  const value = q?.ok ? (q.value as Quantity) : undefined;
  const range =
    value?.low === undefined || value.high === undefined
      ? 'no limits'
      : `${say(value, value.low)} to ${say(value, value.high)}`;
  const named = facts.fact(gauge)?.state;
  return [
    {
      at: gauge,
      what: `"${named?.ok ? String(named.value) : gauge}" cannot be read against the limits of ${sayFact(facts, fact)} (${range}): ${why ?? `only ${counts} of its steps lie inside them, and at least ${least} must`}.`,
      mend: 'Name a finer gauge for this check, or widen the limits.',
      against: [
        { at: fact, text: 'the limits' },
        ...(named?.ok
          ? [{ at: `plant.gauges.${String(named.value)}.resolution`, text: 'the smallest step of the gauge' }]
          : []),
      ],
    },
  ];
}
