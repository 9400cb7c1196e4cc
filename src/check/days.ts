/** Days of the calendar as they stand in specs: YYYY-MM-DD. */

/** Days before each month of a year that is no leap year. */
const BEFORE = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334];

/** Counted from the first of the year nought, by the Gregorian rule: the difference of two is the days between them. */
export function dayNumber(text: string): number {
  const [year = 0, month = 1, day = 1] = text.split('-').map(Number);
  // The leap day of a year counts from March on.
  const past = month > 2 ? year : year - 1;
  const leaps = Math.floor(past / 4) - Math.floor(past / 100) + Math.floor(past / 400);
  return year * 365 + leaps + (BEFORE[month - 1] ?? 0) + day;
}
