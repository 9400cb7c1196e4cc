/** Days as files and commands write them. */

/** A day that is in the calendar, the Gregorian one, written YYYY-MM-DD: 2026-02-30 is none. */
export function isDay(text: string): boolean {
  const [year = 0, month = 0, date = 0] = /^\d{4}-\d{2}-\d{2}$/.test(text) ? text.split('-').map(Number) : [];
  const leap = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
  const days = [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month - 1] ?? 0;
  return date >= 1 && date <= days;
}

/** Days from 1970-01-01 to a day that is in the calendar; negative before it. */
export function dayNumber(day: string): number {
  const [year = 0, month = 0, date = 0] = day.split('-').map(Number);
  // A year begins with March, so that the day a leap year has more is its last.
  const [years, months] = month > 2 ? [year, month - 3] : [year - 1, month + 9];
  const leapDays = Math.floor(years / 4) - Math.floor(years / 100) + Math.floor(years / 400);
  return years * 365 + leapDays + Math.floor((months * 153 + 2) / 5) + date - 1 - EPOCH;
}

/** Days from the first of March of the year 0 to 1970-01-01. */
const EPOCH = 719_468;

/** 1 for Monday to 7 for Sunday. */
export const weekday = (number: number): number => ((((number + 3) % 7) + 7) % 7) + 1;
