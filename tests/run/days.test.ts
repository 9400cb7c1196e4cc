/** Shifts between days, held against the calendar of the language. */
import { expect, test } from 'vitest';
import { shiftsTo } from '../../src/run/jobs.ts';
import { dayNumber, weekday } from '../../src/units/day.ts';

const DAY = 86_400_000;
const textOf = (number: number) => new Date(number * DAY).toISOString().slice(0, 10);

test('every day of 800 years has its number and its day of the week', () => {
  for (let number = dayNumber('1600-01-01'); number <= dayNumber('2400-12-31'); number++) {
    const day = textOf(number);
    if (dayNumber(day) !== number) throw new Error(day);
    if (weekday(number) !== (new Date(number * DAY).getUTCDay() || 7)) throw new Error(`weekday of ${day}`);
  }
  expect(dayNumber('1970-01-01')).toBe(0);
  expect(dayNumber('2026-11-27') * DAY).toBe(Date.parse('2026-11-27'));
});

// 2026-11-27 is a Friday.
test.each([
  ['2026-11-27', '2026-11-27', 0],
  ['2026-11-27', '2026-11-28', 0],
  ['2026-11-27', '2026-11-29', 0],
  ['2026-11-27', '2026-11-30', 1],
  ['2026-11-27', '2026-12-04', 5],
  ['2026-11-27', '2026-12-07', 6],
  ['2026-11-27', '2026-11-26', -1],
  ['2026-11-27', '2026-11-20', -5],
  ['2026-11-28', '2026-11-29', 0],
  ['2026-11-28', '2026-11-30', 1],
  ['2026-12-31', '2027-01-01', 1],
])('from %s to %s', (from, to, shifts) => {
  expect(shiftsTo(from, to)).toBe(shifts);
});

test('day by day it is the count of working days', () => {
  const from = dayNumber('2026-02-25');
  let counted = 0;
  for (let day = from + 1; day < from + 1000; day++) {
    if (weekday(day) <= 5) counted += 1;
    expect(shiftsTo(textOf(from), textOf(day))).toBe(counted);
    expect(shiftsTo(textOf(day), textOf(from))).toBe(counted === 0 ? 0 : -counted);
  }
});
