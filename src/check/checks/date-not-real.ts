/** Every date is a day of the calendar. */
import { leavesOf } from '../../facts/leaves.ts';
import type { Check } from '../check.ts';
import { look } from '../check.ts';

const DATES = /\.(until|retired|calibrated|calibration-due)$/;

const check: Check = {
  id: 'date-not-real',
  stage: 'spec',
  severity: 'error',
  why: 'A day that does not come never ends a permit and never retires a tool.',
  mend: 'Write a real day, as year-month-day.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'notes: { sizing: Sand the glue faces last. }',
    fails:
      'notes: { sizing: Sand the glue faces last. }\npermits: { numeral-in-a-note: { reason: trial, name: R. Holm, until: 2026-02-30 } }',
  },
  run: ({ subject: { spec, plant }, facts }) =>
    [...leavesOf(spec.permits), ...leavesOf(plant)]
      .filter((leaf) => DATES.test(leaf.id))
      .flatMap((leaf) => {
        const date = look(facts, (use) => use(leaf));
        if (typeof date !== 'string' || isDay(date)) return [];
        return [
          { at: leaf.id, what: `There is no day ${date}.`, mend: 'Write a real day, as year-month-day.', against: [] },
        ];
      }),
};
export default check;

function isDay(text: string): boolean {
  const [year = 0, month = 0, day = 0] = text.split('-').map(Number);
  const days = [
    31,
    year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28,
    31,
    30,
    31,
    30,
    31,
    31,
    30,
    31,
    30,
    31,
  ];
  return day >= 1 && day <= (days[month - 1] ?? 0);
}
