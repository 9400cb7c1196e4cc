/** A day on the command line. */
import { InvalidArgumentError } from 'commander';
import { isDay } from '../units/day.ts';

/** A day that is in the calendar: 2026-02-30 is none. */
export function day(text: string): string {
  if (isDay(text)) return text;
  throw new InvalidArgumentError('It is a day of the calendar, as in 2026-03-31.');
}
