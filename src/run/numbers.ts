/** A list of orders as rows of numbers, one row an order and one column a station: what a search goes over many times. */
import type { Floor, Job } from './sequence.ts';

/** Rows × stations, all of them. */
export interface Numbers {
  readonly rows: number;
  readonly stations: number;
  /** What a station must be set up for, as a number; −1 where nothing. */
  readonly text: Int32Array;
  /** Minutes. */
  readonly work: Float64Array;
  /** Minutes from the start, by which the station must be done with it; infinite off its way and where nothing is due. */
  readonly limit: Float64Array;
  /** By row: the least of its limits when it is one order. */
  readonly latest: Float64Array;
  /** By station: minutes of a changeover. */
  readonly change: Float64Array;
  /** By row: the same number for the same set-ups at the same stations. */
  readonly kind: Int32Array;
  readonly kinds: number;
}

/** Of a sequence, the least being the best. */
export interface Cost {
  readonly minutes: number;
  readonly count: number;
  /** Places between where the orders stand and where they stood in the list, summed up. */
  readonly strayed: number;
}

/** Shifts. Well below a second, well above what a hundred thousand additions of minutes lose. */
export const SHIFT_TOLERANCE = 1e-6;

/** Minutes below which two sums of changeovers are the same. */
export const SAME_MINUTES = 1e-6;

/** Rows in the list’s order, and anything may be done at any time. */
export function numbersOf(jobs: readonly Job[], floor: Floor): Numbers {
  const names = [...new Set(jobs.flatMap(({ setUps, minutes }) => [...setUps.keys(), ...minutes.keys()]))];
  const [rows, stations] = [jobs.length, names.length];
  const text = new Int32Array(rows * stations).fill(-1);
  const work = new Float64Array(rows * stations);
  const texts = names.map(() => new Map<string, number>());
  const kinds = new Map<string, number>();
  const kind = new Int32Array(rows);
  jobs.forEach((job, row) => {
    names.forEach((name, station) => {
      const cell = row * stations + station;
      const setUp = job.setUps.get(name);
      if (setUp !== undefined) text[cell] = numbered(texts[station]!, setUp);
      work[cell] = job.minutes.get(name) ?? 0;
    });
    kind[row] = numbered(kinds, text.subarray(row * stations, (row + 1) * stations).join());
  });
  const limit = new Float64Array(rows * stations).fill(Infinity);
  const latest = new Float64Array(rows).fill(Infinity);
  const change = Float64Array.from(names, (name) => floor.changeover.get(name) ?? 0);
  return { rows, stations, text, work, limit, latest, change, kind, kinds: kinds.size };
}

/** `last`: by row, the shift it must be done in. */
export function limited(numbers: Numbers, last: readonly number[], { shift }: Floor): Numbers {
  const { stations, text, work } = numbers;
  // Half of the tolerance: a search that adds up in another sequence may then err by the other half.
  const latest = Float64Array.from(last, (end) => (end + 1 + SHIFT_TOLERANCE / 2) * shift);
  const limit = numbers.limit.map((none, cell) =>
    passes(text[cell]!, work[cell]!) ? latest[Math.floor(cell / stations)]! : none,
  );
  return { ...numbers, limit, latest };
}

const passes = (text: number, work: number): boolean => text >= 0 || work > 0;

function numbered(known: Map<string, number>, text: string): number {
  const number = known.get(text) ?? known.size;
  known.set(text, number);
  return number;
}

/** By row, minutes from the start at which the last station is done with it. */
export function timesOf({ stations, text, work, change, rows }: Numbers, order: Int32Array): number[] {
  const clock = new Float64Array(stations);
  const set = new Int32Array(stations).fill(-1);
  const at = Array.from({ length: rows }, () => 0);
  for (const row of order) {
    for (let station = 0; station < stations; station++) {
      const cell = row * stations + station;
      const next = text[cell]!;
      if (!passes(next, work[cell]!)) continue;
      if (next >= 0) {
        if (set[station]! >= 0 && set[station] !== next) clock[station]! += change[station]!;
        set[station] = next;
      }
      clock[station]! += work[cell]!;
      at[row] = Math.max(at[row]!, clock[station]!);
    }
  }
  return at;
}

export function costOf({ stations, text, change }: Numbers, order: Int32Array): Cost {
  let [minutes, count, strayed] = [0, 0, 0];
  for (let station = 0; station < stations; station++) {
    let [set, changes] = [-1, 0];
    for (const row of order) {
      const next = text[row * stations + station]!;
      if (next < 0) continue;
      if (set >= 0 && set !== next) changes++;
      set = next;
    }
    count += changes;
    minutes += changes * change[station]!;
  }
  order.forEach((row, place) => (strayed += Math.abs(row - place)));
  return { minutes, count, strayed };
}

export function isBetter(one: Cost, other: Cost): boolean {
  if (Math.abs(one.minutes - other.minutes) > SAME_MINUTES) return one.minutes < other.minutes;
  return one.count === other.count ? one.strayed < other.strayed : one.count < other.count;
}
