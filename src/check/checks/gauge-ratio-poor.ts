/** Every measuring gauge is four times as sure as the limits it is held against are wide. */
import type { Bench, Check, Fault } from '../check.ts';
import type { GaugeAt } from '../gauges.ts';
import { andMore, gaugesSeen, sayInstead, sayOf, tooUncertain } from '../gauges.ts';
import { formatNumber } from '../../units/format.ts';
import { limits, line, plan, reading, ring } from '../sketch.ts';
import { capital, sayFact } from '../say.ts';

const check: Check = {
  id: 'gauge-ratio-poor',
  stage: 'card',
  severity: 'caution',
  why: 'A reading that may be off by a large part of the limits passes bad pieces and stops good ones, however finely it is shown.',
  mend: 'Name a gauge with less uncertainty for this check, or widen the limits.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'resolution: 0.01 mm, uncertainty: 0.02 mm, reach: 150',
    fails: 'resolution: 0.01 mm, uncertainty: 0.04 mm, reach: 150',
  },
  sketch: plan(limits(), line('M -28 12 H 28', 'thin'), reading(7, 7, 0), ring(12, 0, 3.6)),
  run: (bench) => gaugesSeen(bench).flatMap((one) => fault(bench, one)),
};
export default check;

function fault(bench: Bench, one: GaugeAt): Fault[] {
  const { at, gauge } = one;
  // Where no reading proves anything, that is said, and not this besides.
  const poor = one.against.filter(({ span, reading }) => reading.provable === true && tooUncertain(gauge, span));
  const [worst] = poor;
  const { off, rule, name } = gauge;
  if (!worst || !off || rule.ratio === undefined) return [];
  const ratio = formatNumber(worst.span / (2 * off.value), '', 2);
  const least = formatNumber(rule.ratio, '', 0);
  return [
    {
      at,
      what: `The limits of ${sayFact(bench.facts, worst.reading.fact)} lie ${sayOf(gauge, worst.span)} apart, and a reading of "${name}" may be off by ±${sayOf(gauge, off.value)}: ${sayOf(gauge, worst.span)} ÷ (2 × ${sayOf(gauge, off.value)}) = ${ratio}. ${capital(rule.called)} should come to at least ${least}.${andMore(poor.length - 1)}`,
      mend: `${sayInstead(bench, one) ?? `No other gauge of the plant would do: get one that is off by no more than ±${sayOf(gauge, worst.span / (2 * rule.ratio))}.`} Or let the limits lie ${sayOf(gauge, 2 * rule.ratio * off.value)} apart.`,
      against: [
        { at: worst.reading.fact, text: 'the limits' },
        ...(gauge.row.uncertainty ? [{ at: gauge.row.uncertainty.id, text: 'how far a reading may be off' }] : []),
      ],
    },
  ];
}
