/** Every gauge reads finely enough for the limits it is held against. */
import type { Bench, Check, Fault } from '../check.ts';
import type { GaugeAt } from '../gauges.ts';
import { andMore, gaugesSeen, sayInstead, sayOf, tooCoarse } from '../gauges.ts';
import { formatNumber } from '../../units/format.ts';
import { graduation, limits, plan, reading, ring } from '../sketch.ts';
import { sayFact } from '../say.ts';

const check: Check = {
  id: 'gauge-too-coarse',
  stage: 'card',
  severity: 'caution',
  why: 'The last step of the gauge is a large part of what is allowed: near a limit the rounding of the gauge decides whether a piece is in or out.',
  mend: 'Name a finer gauge for this check, or widen the limits.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'unit: in, resolution: 0.001 in, uncertainty: 0.001 in',
    fails: 'unit: in, resolution: 0.002 in, uncertainty: 0.001 in',
  },
  sketch: plan(limits(-8), graduation(8), reading(-8, 0), reading(0, 0), reading(8, 0), ring(8, 0, 3.6)),
  run: (bench) => gaugesSeen(bench).flatMap((one) => fault(bench, one)),
};
export default check;

function fault(bench: Bench, one: GaugeAt): Fault[] {
  const { at, gauge, against } = one;
  // Where it cannot be read against the limits at all, that is said, and not this besides.
  const coarse = against.filter(
    ({ span, reading }) => reading.counts >= (gauge.rule.leastCounts ?? 0) && tooCoarse(gauge, span),
  );
  const [worst] = coarse;
  if (!worst) return [];
  const { rule, step, name } = gauge;
  const parts = rule.steps ?? 1;
  const share = `${sayOf(gauge, worst.span)} ÷ ${formatNumber(parts, '', 0)} = ${sayOf(gauge, worst.span / parts)}`;
  return [
    {
      at,
      what: `"${name}" reads in steps of ${sayOf(gauge, step.value)}. For the limits of ${sayFact(bench.facts, worst.reading.fact)} ${rule.called} should read in steps of no more than ${share}.${andMore(coarse.length - 1)}`,
      mend: `${sayInstead(bench, one) ?? `No other gauge of the plant would do: get one that reads in steps of ${sayOf(gauge, worst.span / parts)} or finer.`} Or let the limits lie ${sayOf(gauge, step.value * parts)} apart.`,
      against: [
        { at: worst.reading.fact, text: 'the limits' },
        { at: gauge.row.resolution.id, text: 'the smallest step of the gauge' },
      ],
    },
  ];
}
