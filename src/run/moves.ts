/**
 * Moving some rows that stand together to another place in a sequence: what it saves, and whether the limits allow it. Tables by
 * place make the first cost one look at each station, and the second a walk over the places between.
 */
import type { Numbers } from './numbers.ts';

/** `length` rows from place `from` on are put before the place `to`, counted as they stand now: outside from … from + length. */
export interface Move {
  readonly from: number;
  readonly length: number;
  readonly to: number;
}

export interface Moves {
  readonly order: Int32Array;
  /** Minutes more, each changeover weighing a trifle besides its own. */
  readonly costs: (move: Move) => number;
  readonly allowed: (move: Move) => boolean;
  readonly make: (move: Move) => void;
  /** Whether the order keeps the limits as it stands. */
  readonly keeps: () => boolean;
  /** The rows at the places from `low` to `high` by themselves, as the first and last of these rows see the others: see there. */
  readonly part: (low: number, high: number) => Numbers;
}

/** Minutes each changeover weighs besides its own, so that among equal minutes the fewer count. */
export const TRIFLE = 1e-7;

const NONE = -1;

/** Over its own copy of the order. */
export function movesOf(numbers: Numbers, given: Int32Array): Moves {
  const { rows, stations, text, work, limit, change } = numbers;
  const order = given.slice();
  const size = (rows + 1) * stations;
  /** By place and station, before that place: minutes gone, the last set-up and the place it stands at. */
  const clock = new Float64Array(size);
  const before = new Int32Array(size);
  const beforeAt = new Int32Array(size);
  /** From that place on: the first set-up and its place, and how much later all may be. */
  const after = new Int32Array(size);
  const afterAt = new Int32Array(size);
  const slack = new Float64Array(size);
  const now = new Float64Array(stations);
  const set = new Int32Array(stations);

  const forward = (start: number): void => {
    for (let place = start; place < rows; place++) {
      const [here, row] = [place * stations, order[place]! * stations];
      for (let s = 0; s < stations; s++) {
        const [cell, next, own] = [here + s, here + stations + s, text[row + s]!];
        clock[next] = clock[cell]! + differ(before[cell]!, own) * change[s]! + work[row + s]!;
        before[next] = own === NONE ? before[cell]! : own;
        beforeAt[next] = own === NONE ? beforeAt[cell]! : place;
      }
    }
  };
  const backward = (): void => {
    for (let place = rows - 1; place >= 0; place--) {
      const [here, row] = [place * stations, order[place]! * stations];
      for (let s = 0; s < stations; s++) {
        const [cell, next, own] = [here + s, here + stations + s, text[row + s]!];
        after[cell] = own === NONE ? after[next]! : own;
        afterAt[cell] = own === NONE ? afterAt[next]! : place;
        slack[cell] = Math.min(slack[next]!, limit[row + s]! - clock[next]!);
      }
    }
  };
  before.fill(NONE, 0, stations);
  beforeAt.fill(NONE, 0, stations);
  after.fill(NONE, rows * stations);
  afterAt.fill(rows, rows * stations);
  slack.fill(Infinity, rows * stations);
  forward(0);
  backward();

  const costs = ({ from, length, to }: Move): number => {
    const [a, b, q, end] = [from * stations, (from + length) * stations, to * stations, from + length];
    let sum = 0;
    for (let s = 0; s < stations; s++) {
      if (afterAt[a + s]! >= end) continue;
      const [first, last, prior, next] = [after[a + s]!, before[b + s]!, before[a + s]!, after[b + s]!];
      let [u, v] = [before[q + s]!, after[q + s]!];
      if (to > from) u = beforeAt[q + s]! >= end ? u : prior;
      else v = afterAt[q + s]! < from ? v : next;
      const more = differ(u, first) + differ(last, v) - differ(u, v);
      const less = differ(prior, first) + differ(last, next) - differ(prior, next);
      if (more !== less) sum += (more - less) * (change[s]! + TRIFLE);
    }
    return sum;
  };

  /** Works through the places on what is on the clock; false where a limit is broken. */
  const through = (start: number, stop: number): boolean => {
    for (let place = start; place < stop; place++) {
      const row = order[place]! * stations;
      for (let s = 0; s < stations; s++) {
        const own = text[row + s]!;
        const minutes = work[row + s]!;
        if (own === NONE && minutes === 0) continue;
        now[s]! += differ(set[s]!, own) * change[s]! + minutes;
        if (own !== NONE) set[s] = own;
        if (now[s]! > limit[row + s]!) return false;
      }
    }
    return true;
  };
  const allowed = ({ from, length, to }: Move): boolean => {
    const [start, stop] = [Math.min(from, to), Math.max(from + length, to)];
    const cut = to > from ? from + length : from;
    const [a, b] = [start * stations, stop * stations];
    for (let s = 0; s < stations; s++) {
      now[s] = clock[a + s]!;
      set[s] = before[a + s]!;
    }
    if (!through(cut, stop) || !through(start, cut)) return false;
    for (let s = 0; s < stations; s++) {
      const turn = differ(set[s]!, after[b + s]!) - differ(before[b + s]!, after[b + s]!);
      if (now[s]! - clock[b + s]! + turn * change[s]! > slack[b + s]!) return false;
    }
    return true;
  };
  const make = ({ from, length, to }: Move): void => {
    const [start, stop] = [Math.min(from, to), Math.max(from + length, to)];
    const cut = to > from ? from + length : from;
    const moved = [...order.subarray(cut, stop), ...order.subarray(start, cut)];
    order.set(moved, start);
    forward(start);
    backward();
  };
  /** A row in front stands for all that comes before, and one at the end for all that comes after: both must stay there. */
  const part = (low: number, high: number): Numbers => {
    const [a, b] = [low * stations, high * stations];
    const end = clock.slice(b, b + stations).map((minutes, s) => {
      const turn = differ(before[b + s]!, after[b + s]!) * change[s]!;
      return minutes + turn + slack[b + s]!;
    });
    const free = new Float64Array(stations).fill(Infinity);
    const [nothing, then] = [new Float64Array(stations), clock.subarray(a, a + stations)];
    const cells = <T>(of: { subarray: (from: number, to: number) => Iterable<T> }): T[] =>
      [...order.subarray(low, high)].flatMap((row) => [...of.subarray(row * stations, (row + 1) * stations)]);
    return {
      ...numbers,
      rows: high - low + 2,
      text: Int32Array.of(...before.subarray(a, a + stations), ...cells(text), ...after.subarray(b, b + stations)),
      work: Float64Array.of(...then, ...cells(work), ...nothing),
      limit: Float64Array.of(...free, ...cells(limit), ...end),
    };
  };
  const keeps = (): boolean => slack.subarray(0, stations).every((minutes) => minutes >= 0);
  return { order, costs, allowed, make, keeps, part };
}

const differ = (one: number, other: number): number => (one >= 0 && other >= 0 && one !== other ? 1 : 0);
