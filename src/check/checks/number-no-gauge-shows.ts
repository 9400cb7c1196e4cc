/** A time to keep, or a mass to weigh out, is some steps of what the station reads it on. */
import type { Quantity } from '../../units/quantity.ts';
import type { Bench, Check, Fault } from '../check.ts';
import type { GaugeAt } from '../gauges.ts';
import { gaugesSeen, sayOf } from '../gauges.ts';

/** Numbers without limits that are read off all the same: set on a clock, weighed on a scale. */
const READ_OFF: readonly string[] = ['time', 'mass'];

const check: Check = {
  id: 'number-no-gauge-shows',
  stage: 'card',
  severity: 'error',
  why: 'Nobody can set or weigh out what the gauge has no mark for: the number on the card is kept by guess.',
  mend: 'Put the time or the mass right, or name a gauge with finer steps for this station.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'unit: s, resolution: 0.1 s',
    fails: 'unit: s, resolution: 10 s',
  },
  run: (bench) => {
    const all = gaugesSeen(bench);
    return bench.seen.flatMap(({ station, figures }) => {
      const here = all.filter((one) => one.station === station);
      return READ_OFF.flatMap((kind) => {
        const [finest] = here
          .filter(({ gauge: { step } }) => step.kind === kind)
          .toSorted((a, b) => a.gauge.step.value - b.gauge.step.value);
        return finest ? figures.flatMap((fact) => fault(bench, finest, fact)) : [];
      });
    });
  },
};
export default check;

function fault({ facts }: Bench, { at, gauge }: GaugeAt, fact: string): Fault[] {
  const state = facts.fact(fact)?.state;
  const q = state?.ok ? (state.value as Quantity) : undefined;
  const { rule, step, name, row } = gauge;
  const least = step.value * (rule.leastCounts ?? 0);
  if (q?.kind !== step.kind || q.value >= least) return [];
  return [
    {
      at,
      what: `"${name}" reads in steps of ${sayOf(gauge, step.value)}, and the card asks for ${sayOf(gauge, q.value)}: ${rule.called} takes ${rule.leastCounts} steps at least, ${sayOf(gauge, least)}.`,
      mend: `Put the number right, or name a gauge here that has ${rule.leastCounts} steps or more in ${sayOf(gauge, q.value)}.`,
      against: [
        { at: fact, text: 'what the card asks for' },
        { at: row.resolution.id, text: 'its smallest step' },
      ],
    },
  ];
}
