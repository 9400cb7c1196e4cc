/** Days as files and commands write them. */

/** A day that is in the calendar, the Gregorian one, written YYYY-MM-DD: 2026-02-30 is none. */
export function isDay(text: string): boolean {
  const [year = 0, month = 0, date = 0] = /^\d{4}-\d{2}-\d{2}$/.test(text) ? text.split('-').map(Number) : [];
  const leap = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
  const days = [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month - 1] ?? 0;
  return date >= 1 && date <= days;
}
