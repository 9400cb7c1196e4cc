/** Of every gauge some reading proves a piece in: the limits, drawn in by its uncertainty on both sides, leave one. */
import type { Bench, Check, Fault } from '../check.ts';
import type { GaugeAt } from '../gauges.ts';
import { andMore, gaugesSeen, sayInstead, sayOf } from '../gauges.ts';
import { limits, line, plan, reading, ring } from '../sketch.ts';
import { sayFact } from '../say.ts';

const check: Check = {
  id: 'no-reading-proves',
  stage: 'card',
  severity: 'error',
  why: 'Whatever the gauge shows, the piece may be out: the check is work for nothing, and looks like proof.',
  mend: 'Name a gauge with less uncertainty for this check, or widen the limits.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'resolution: 1 %, uncertainty: 2 %',
    fails: 'resolution: 1 %, uncertainty: 4 %',
  },
  sketch: plan(limits(), line('M -28 12 H 28', 'thin'), reading(0, 16, 0), ring(0, 0, 3)),
  run: (bench) => gaugesSeen(bench).flatMap((one) => fault(bench, one)),
};
export default check;

function fault(bench: Bench, one: GaugeAt): Fault[] {
  const { at, gauge } = one;
  const lost = one.against.filter(({ reading }) => reading.provable === false);
  const [worst] = lost;
  const { off, name } = gauge;
  if (!worst || !off) return [];
  const guarded = worst.reading.guarded;
  const left = worst.span - 2 * off.value;
  const drawn =
    left < 0
      ? `the two limits pass each other by ${sayOf(gauge, -left)}`
      : `${sayOf(gauge, left)} are left, and no reading of it in steps of ${sayOf(gauge, gauge.step.value)} lies there`;
  return [
    {
      at,
      what: `The limits of ${sayFact(bench.facts, worst.reading.fact)} lie ${sayOf(gauge, worst.span)} apart, and a reading of "${name}" may be off by ±${sayOf(gauge, off.value)}. Drawn in by that on both sides, ${drawn}.${andMore(lost.length - 1)}`,
      mend: `${sayInstead(bench, one) ?? `No other gauge of the plant would do: get one that is off by less than ±${sayOf(gauge, worst.span / 2)}.`} Or let the limits lie more than ${sayOf(gauge, 2 * off.value + gauge.step.value)} apart.`,
      against: [
        { at: worst.reading.fact, text: 'the limits' },
        ...(gauge.row.uncertainty ? [{ at: gauge.row.uncertainty.id, text: 'how far a reading may be off' }] : []),
        ...(guarded === undefined ? [] : [{ at: guarded, text: 'acceptance limits are asked for here' }]),
      ],
    },
  ];
}
