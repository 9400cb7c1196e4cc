/** Every gauge on a card is between its last calibration and the day the next is due. */
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import type { GaugeAt } from '../gauges.ts';
import { gaugesSeen, sayInstead } from '../gauges.ts';

const check: Check = {
  id: 'gauge-not-calibrated',
  stage: 'card',
  severity: 'error',
  why: 'Nobody knows any more how far its readings are off: every piece it passes is passed on trust.',
  mend: 'Have it calibrated and write both dates, or name another gauge at the station.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'calibration-due: 2027-11-19',
    fails: 'calibration-due: 2026-10-31',
  },
  run: (bench) => gaugesSeen(bench).flatMap((one) => fault(bench, one)),
};
export default check;

function fault(bench: Bench, one: GaugeAt): Fault[] {
  const { gauge, station } = one;
  const { calibrated, 'calibration-due': due } = gauge.row;
  const seen = look(bench.facts, (use) => ({
    ...(calibrated ? { from: use(calibrated) } : {}),
    ...(due ? { to: use(due) } : {}),
  }));
  if (!seen) return [];
  const { from, to } = seen;
  const { on } = bench;
  const text =
    due && to !== undefined && to < on
      ? { at: due.id, what: `was due for calibration on ${to}` }
      : calibrated && from !== undefined && from > on
        ? { at: calibrated.id, what: `is said to be calibrated on ${from}, a day still to come` }
        : undefined;
  if (!text) return [];
  return [
    {
      at: text.at,
      what: `"${gauge.name}" ${text.what}; the cards are made for ${on}, and the card of ${station} names it.`,
      mend: `Have it calibrated and write both dates. ${sayInstead(bench, one) ?? 'No other gauge of the plant would do meanwhile.'}`,
      against: [{ at: one.at, text: 'where the station names it' }],
    },
  ];
}
