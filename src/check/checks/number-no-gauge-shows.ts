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
  const shown = facts.fact(fact);
  const q = shown?.state.ok ? (shown.state.value as Quantity) : undefined;
  const { rule, step, name, row } = gauge;
  if (!shown || q?.kind !== step.kind) return [];
  // What was given is to be kept to a part of itself. What others leave over, as the time to load, is kept if it shows at all.
  const given = shown.origin.kind !== 'derived' || shown.inputs.length === 1;
  const steps = given ? (rule.leastCounts ?? 1) : 1;
  const least = step.value * steps;
  if (q.value >= least) return [];
  const many = `${steps} ${steps === 1 ? 'step' : 'steps'}`;
  return [
    {
      at,
      what: `"${name}" reads in steps of ${sayOf(gauge, step.value)}, and the card asks for ${sayOf(gauge, q.value)}. It should ask for ${many} at least, ${sayOf(gauge, least)}.`,
      mend: `Put the number right, or name a gauge here that has ${many} or more in ${sayOf(gauge, q.value)}.`,
      against: [
        { at: fact, text: 'what the card asks for' },
        { at: row.resolution.id, text: 'its smallest step' },
      ],
    },
  ];
}
