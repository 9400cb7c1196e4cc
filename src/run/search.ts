/**
 * The general way: sequences made from their end, each out of the best one so far; then runs of one kind, and in short lists
 * single orders, are moved to other places while that saves something; then some are moved by chance, and moved on from there.
 * Work is counted in looks at a station, not in time, so that the same list has the same plan on every machine.
 */
import { dispatched, LOOK_BACK } from './dispatch.ts';
import type { Move, Moves } from './moves.ts';
import { movesOf } from './moves.ts';
import type { Cost, Numbers } from './numbers.ts';
import { costOf, isBetter } from './numbers.ts';
import { runsOf } from './runs.ts';

/** How much what may follow without a changeover counts, each tried. */
const GREEDS = [0, 0.5, 1] as const;
/** Rounds of making anew out of the best one; most lists stand still before. */
const MOST_ROUNDS = 6;
/** Rows up to which single orders are moved, besides whole runs. */
const SINGLES = 300;
/** Rows that are moved among each other; more are taken in parts of so many, or of a tenth, since each part needs a look at all. */
const PART = 400;
const PARTS = 10;
/** Looks at a station by all makings anew, as many by all searches over moves; of what is left, the share one search may take. */
const LOOKS = 2.5e7;
const SHARE = 0.5;
/** Times that some rows are moved by chance: for each row, and at the least where they are single orders. */
const SHAKES = 25;
const LEAST_SHAKES = 400;
/** One of so many that are dearer is gone on from all the same; after so many shakes it is back to the best. */
const ASTRAY = 6;
const BACK_AFTER = 60;
/** Rows that may be moved together. */
const TOGETHER = 3;
/** Places around those moved by chance in which is then looked. */
const AROUND = 24;
/** Minutes below which nothing is saved. */
const NOTHING = 1e-9;

/** `own`: the list’s order, which keeps the limits. */
export function searched(numbers: Numbers, own: Int32Array): Int32Array {
  const better = (one: Int32Array, other: Int32Array): Int32Array =>
    isBetter(costOf(numbers, one), costOf(numbers, other)) ? one : other;
  const once = numbers.rows * numbers.stations * Math.min(numbers.kinds, LOOK_BACK);
  let looksAnew = LOOKS;
  const anew = (from: Int32Array): Int32Array => {
    let best = from;
    for (const greed of GREEDS) {
      if (looksAnew > 0) best = better(dispatched(numbers, from, greed), best);
      looksAnew -= once;
    }
    return best;
  };
  let looks = LOOKS;
  const share = (): Budget => {
    looks *= 1 - SHARE;
    return { looks: (looks * SHARE) / (1 - SHARE) };
  };
  let best = own;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const from = best;
    best = anew(from);
    if (best === from) break;
  }
  for (let round = 0; round < MOST_ROUNDS / 2; round++) {
    const from = best;
    const runs = runsOf(numbers, best);
    const inTurn = Int32Array.from({ length: runs.numbers.rows }, (_, i) => i);
    best = anew(better(runs.single(movedInParts(runs.numbers, inTurn, share())), best));
    if (best === from) break;
  }
  if (numbers.rows > SINGLES) return best;
  return better(moved(numbers, best, { low: 0, high: numbers.rows }, true, share()), best);
}

interface Budget {
  looks: number;
}

/** Places from … to … . */
interface Zone {
  readonly low: number;
  readonly high: number;
}

/** Parts that reach half into each other, so that what one cannot move over its end the next one can. */
function movedInParts(numbers: Numbers, order: Int32Array, budget: Budget): Int32Array {
  const { rows } = numbers;
  if (rows <= PART) return moved(numbers, order, { low: 0, high: rows }, false, budget);
  let made = order;
  const half = Math.max(PART / 2, Math.ceil(rows / PARTS / 2));
  const looks = (budget.looks * half) / rows;
  for (let low = 0; low + half < rows; low += half) {
    const high = Math.min(rows, low + 2 * half);
    const part = movesOf(numbers, made).part(low, high);
    const inTurn = Int32Array.from({ length: part.rows }, (_, i) => i);
    const best = moved(part, inTurn, { low: 1, high: part.rows - 1 }, false, { looks });
    const next = made.slice();
    best.subarray(1, part.rows - 1).forEach((row, place) => (next[low + place] = made[low + row - 1]!));
    made = next;
  }
  return made;
}

/** Within the bounds. `near`: rows are numbered as in the list, and among equals the nearer to it is taken. */
function moved(numbers: Numbers, order: Int32Array, bounds: Zone, near: boolean, budget: Budget): Int32Array {
  const { rows, stations } = numbers;
  const start = movesOf(numbers, order);
  settle(start, stations, bounds, near, budget);
  let [best, least] = [start.order, costOf(numbers, start.order)];
  let [current, cost] = [best, least];
  const chance = chances();
  const shakes = Math.max(near ? LEAST_SHAKES : 0, SHAKES * rows);
  for (let shake = 1; shake <= shakes && bounds.high - bounds.low > 2 && budget.looks > 0; shake++) {
    if (shake % BACK_AFTER === 0) [current, cost] = [best, least];
    const tried = movesOf(numbers, current);
    const zone = shaken(tried, bounds, chance);
    budget.looks -= 8 * rows * stations;
    if (!tried.keeps()) continue;
    settle(tried, stations, zone, near, budget);
    const reached = costOf(numbers, tried.order);
    // On the level one goes on from the other: it may lead down elsewhere.
    if (isDearer(reached, cost) && chance(ASTRAY) > 0) continue;
    [current, cost] = [tried.order, reached];
    if (near ? isBetter(reached, least) : isDearer(least, reached)) [best, least] = [tried.order, reached];
  }
  return best;
}

/** However near to the list. */
const isDearer = (one: Cost, other: Cost): boolean => isBetter({ ...other, strayed: 0 }, { ...one, strayed: 0 });

/** Makes each move that saves most of those of its rows, until none saves anything or the budget is spent. */
function settle(moves: Moves, stations: number, { low, high }: Zone, near: boolean, budget: Budget): void {
  const bestOf = (from: number, length: number): Move | undefined => {
    let [best, least, closer]: [Move | undefined, number, number] = [undefined, 0, 0];
    for (let to = low; to <= high; to++) {
      if (to >= from && to <= from + length) continue;
      const move = { from, length, to };
      const costs = moves.costs(move);
      budget.looks -= stations;
      if (costs > least + NOTHING || (!near && costs > least - NOTHING)) continue;
      const strays = near ? strayedBy(moves.order, move) : 0;
      if (costs > least - NOTHING && strays >= closer) continue;
      budget.looks -= Math.abs(to - from) * stations;
      if (moves.allowed(move)) [best, least, closer] = [move, costs, strays];
    }
    return best;
  };
  for (let saved = true; saved && budget.looks > 0;) {
    saved = false;
    for (let from = low; from < high && budget.looks > 0; from++) {
      for (let length = 1; length <= TOGETHER && from + length <= high; length++) {
        const best = bestOf(from, length);
        if (!best) continue;
        moves.make(best);
        budget.looks -= 3 * moves.order.length * stations;
        saved = true;
      }
    }
  }
}

/** Places more between where the rows stand and where they stood in the list. */
function strayedBy(order: Int32Array, { from, length, to }: Move): number {
  const shift = to > from ? -length : length;
  let sum = 0;
  for (let place = Math.min(from, to); place < Math.max(from + length, to); place++) {
    const inside = place >= from && place < from + length;
    const then = inside ? place + (to > from ? to - from - length : to - from) : place + shift;
    sum += Math.abs(order[place]! - then) - Math.abs(order[place]! - place);
  }
  return sum;
}

/**
 * Two to four moves by chance in one part of the sequence: as far as each is allowed, or else, every other time, all of them,
 * since two may keep the limits of which neither does by itself.
 */
function shaken(moves: Moves, { low, high }: Zone, chance: (below: number) => number): Zone {
  const middle = low + chance(high - low);
  const zone = { low: Math.max(low, middle - AROUND), high: Math.min(high, middle + AROUND) };
  const wide = zone.high - zone.low;
  const each = chance(2) === 0;
  for (let left = 2 + chance(3); left > 0; left--) {
    const from = zone.low + chance(wide);
    const length = Math.min(zone.high - from, 1 + chance(TOGETHER));
    const to = zone.low + chance(wide + 1);
    const move = { from, length, to };
    if ((to < from || to > from + length) && (!each || moves.allowed(move))) moves.make(move);
  }
  return zone;
}

/** A multiplicative generator modulo the prime 2³¹ − 1: what it gives is the same every time. */
function chances(): (below: number) => number {
  let state = 1;
  return (below) => {
    state = (state * 48271) % 2147483647;
    return state % below;
  };
}
