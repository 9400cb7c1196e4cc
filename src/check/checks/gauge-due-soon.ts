/** The calibration of no gauge on a card runs out within a month. */
import type { Check } from '../check.ts';
import { look } from '../check.ts';
import { dayNumber } from '../days.ts';
import { gaugesSeen } from '../gauges.ts';
import { formatNumber } from '../../units/format.ts';

/** Days before it is due that it is said: time to send a gauge away and have it back; common practice, no source. */
const DAYS = 30;

const check: Check = {
  id: 'gauge-due-soon',
  stage: 'card',
  severity: 'caution',
  why: 'From the day after that, no card that names this gauge can be made.',
  mend: 'Send it to be calibrated, and write both dates when it is back.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'calibration-due: 2027-11-19',
    fails: 'calibration-due: 2026-12-14',
  },
  run: (bench) =>
    gaugesSeen(bench).flatMap(({ at, gauge: { name, row } }) => {
      const due = row['calibration-due'];
      const to = due && look(bench.facts, (use) => use(due));
      if (!due || to === undefined || to < bench.on) return [];
      const days = dayNumber(to) - dayNumber(bench.on);
      if (days > DAYS) return [];
      return [
        {
          at: due.id,
          what: `"${name}" is due for calibration on ${to}, ${formatNumber(days, '', 0)} days after ${bench.on}.`,
          mend: 'Send it to be calibrated, and write both dates when it is back.',
          against: [{ at, text: 'where a station names it' }],
        },
      ];
    }),
};
export default check;
