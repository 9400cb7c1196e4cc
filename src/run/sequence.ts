/**
 * In which order a list of orders is worked through, pure arithmetic: least time in changeovers, and no order later than the
 * list’s own order would have made it.
 *
 * How time runs is the plant’s own simplification, and no more: every station works through the same sequence from what stands
 * in front of it, so an order is done when the slowest of its stations has got through it. For each station on its way that is
 * the sum of minutes and changeovers there, up to and with the order; `at` is the greatest of those. Nothing waits for the
 * station before, and nothing stands idle.
 *
 * A station is on the way of an order that has a set-up there, or minutes above 0. A changeover happens at a station between two
 * successive orders with different set-ups there, whatever passes it by in between; the first one at a station needs none.
 *
 * The rule, for each order with a due: shifts late, max(0, done − due), at most as in the list’s own order. That is a last shift
 * for each, the later one of its due and the shift the list’s own order gets it done in.
 *
 * The goal: least minutes of changeovers; on a tie fewest changeovers; on a tie nearest to the list, measured as the places
 * between where an order stands in the plan and in the list, summed up over all orders. Up to `EXACT_UP_TO` orders the goal is
 * met exactly, and of equals the one that is first to take up what is earlier in the list. Above, it is neared: the list’s own order is what is started from, and only what is better replaces it.
 */
import { exactly } from './exact.ts';
import type { Numbers } from './numbers.ts';
import { costOf, isBetter, limited, numbersOf, SHIFT_TOLERANCE, timesOf } from './numbers.ts';
import { searched } from './search.ts';

/** An order as the floor sees it. */
export interface Job {
  readonly id: string;
  /**
   * By station, what it must be set up for: two orders with the same text need no changeover between them. A station that the
   * order does not pass has no entry.
   */
  readonly setUps: ReadonlyMap<string, string>;
  /** Minutes of work by station, of the whole order. */
  readonly minutes: ReadonlyMap<string, number>;
  /** Shifts from the day of the run on: 0 is due on the day itself. Absent where nothing is due. May be negative (already late). */
  readonly due?: number;
}

export interface Floor {
  /** Minutes a station takes to be set up for something else; a station without an entry takes none. */
  readonly changeover: ReadonlyMap<string, number>;
  /** Minutes of a shift, above 0. */
  readonly shift: number;
}

export interface Timed {
  readonly id: string;
  /** Shift in which the last station is done with it, 0 the first. What ends with a shift is done in that shift. */
  readonly done: number;
  /** Minutes from the start of the run. */
  readonly at: number;
}

export interface Plan {
  readonly order: readonly string[];
  /** In the order of the plan. */
  readonly timed: readonly Timed[];
  /** Minutes, over all stations. */
  readonly changeoverMinutes: number;
  /** Number, over all stations, also of those that take no time. */
  readonly changeovers: number;
}

/** Orders: so many can be looked through in all their sequences while one waits for nothing. */
export const EXACT_UP_TO = 8;

/** A given order of the jobs, timed. */
export function timedIn(jobs: readonly Job[], floor: Floor): Plan {
  return planOf(jobs, floor, numbersOf(jobs, floor), inList(jobs));
}

/** The best order found. Deterministic: same input, same output. */
export function sequenced(jobs: readonly Job[], floor: Floor): Plan {
  return planBy(jobs, floor, jobs.length > EXACT_UP_TO ? searched : exactly);
}

/** What carries long lists, also where all sequences could be looked through. */
export function sequencedBySearch(jobs: readonly Job[], floor: Floor): Plan {
  return planBy(jobs, floor, searched);
}

function planBy(jobs: readonly Job[], floor: Floor, find: (numbers: Numbers, own: Int32Array) => Int32Array): Plan {
  const own = inList(jobs);
  const free = numbersOf(jobs, floor);
  const done = timesOf(free, own).map((at) => shiftOf(at, floor));
  const last = jobs.map(({ due }, job) => (due === undefined ? Infinity : Math.max(due, done[job]!)));
  const numbers = limited(free, last, floor);
  const order = find(numbers, own);
  // Sums are added up in another sequence while searching: what is handed out is held against the rule once more, as it is told.
  const kept = timesOf(numbers, order).every((at, job) => shiftOf(at, floor) <= last[job]!);
  return planOf(jobs, floor, numbers, kept && isBetter(costOf(numbers, order), costOf(numbers, own)) ? order : own);
}

const inList = (jobs: readonly Job[]): Int32Array => Int32Array.from(jobs, (_, i) => i);

/** What ends exactly with a shift is done in it; sums of floating point may lie a trifle beyond. */
const shiftOf = (at: number, { shift }: Floor): number => Math.max(0, Math.ceil(at / shift - SHIFT_TOLERANCE) - 1);

function planOf(jobs: readonly Job[], floor: Floor, numbers: Numbers, order: Int32Array): Plan {
  const times = timesOf(numbers, order);
  const { minutes, count } = costOf(numbers, order);
  const timed = [...order].map((job) => ({ id: jobs[job]!.id, done: shiftOf(times[job]!, floor), at: times[job]! }));
  return { order: timed.map(({ id }) => id), timed, changeoverMinutes: minutes, changeovers: count };
}
