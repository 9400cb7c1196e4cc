/**
 * A sequence made from its end, out of one that keeps the limits. Seen from the end, an order may stand last where all the
 * minutes of what is left do not go beyond its limit, and what is left can always be worked through as it stood: leaving one
 * out of a sequence makes no other later. So orders of one kind are gathered at the latest place they may all stand, and no
 * choice leads into a corner: the last one of what is left may always be taken.
 */
import type { Numbers } from './numbers.ts';

/** Orders looked at from the end of what is left, where there are more kinds than that. */
export const LOOK_BACK = 40;

/** What is left, as it stood, with its neighbours at every station; `NONE` at an end. */
const NONE = -1;

/**
 * `greed`: how much the number of orders that may follow each other without a changeover counts against what the changeover
 * to them takes: 0 nothing, 1 in proportion.
 */
export function dispatched(numbers: Numbers, order: Int32Array, greed: number): Int32Array {
  const { rows, stations, text, work, limit, change } = numbers;
  const left = leftOf(numbers, order);
  const { before, after, tail } = left;
  const piles = pilesOf(numbers, order);
  const total = totalsOf(numbers, order);
  const head = new Int32Array(stations).fill(NONE);
  const slack = new Float64Array(stations).fill(Infinity);
  const made = new Int32Array(rows);
  const taken = new Uint8Array(rows);

  /** Changeovers at a station that fall away when a row is left out, and those to it when it comes last. */
  const moved = (row: number, station: number): { readonly away: number; readonly to: number; readonly on: number } => {
    const cell = row * stations + station;
    const [own, next, prior] = [text[cell]!, after[cell]!, before[cell]!];
    const textOf = (other: number): number => (other === NONE ? NONE : text[other * stations + station]!);
    const [t, u] = [textOf(prior), textOf(next)];
    const end = tail[station]!;
    const last = end === row ? t : textOf(end);
    return {
      away: differ(t, own) + differ(own, u) - differ(t, u),
      to: differ(last, own),
      on: differ(own, head[station]!) - differ(textOf(end), head[station]!),
    };
  };
  const may = (row: number): boolean => {
    for (let station = 0; station < stations; station++) {
      const cell = row * stations + station;
      if (text[cell] === NONE) {
        if (total[station]! > limit[cell]!) return false;
        continue;
      }
      const { away, to, on } = moved(row, station);
      const later = (to - away) * change[station]!;
      if (total[station]! + later > limit[cell]! || later + on * change[station]! > slack[station]!) return false;
    }
    return true;
  };
  const take = (row: number): void => {
    for (let station = 0; station < stations; station++) {
      const cell = row * stations + station;
      if (text[cell] !== NONE) {
        const { away, to, on } = moved(row, station);
        slack[station]! -= (to - away + on) * change[station]!;
        slack[station] = Math.min(slack[station]!, limit[cell]! - total[station]! - (to - away) * change[station]!);
        total[station]! -= away * change[station]!;
        head[station] = text[cell]!;
      } else slack[station] = Math.min(slack[station]!, limit[cell]! - total[station]!);
      total[station]! -= work[cell]!;
    }
    left.drop(row);
    taken[row] = 1;
  };
  /** Minutes to set the stations up from a row for what comes after it. */
  const step = (row: number): number => {
    let minutes = 0;
    for (let station = 0; station < stations; station++) {
      minutes += differ(text[row * stations + station]!, head[station]!) * change[station]!;
    }
    return minutes;
  };
  const topOf = (kind: number): number => {
    const pile = piles[kind]!;
    while (pile.length > 0 && taken[pile.at(-1)!]) pile.pop();
    return pile.at(-1) ?? NONE;
  };

  let [end, current] = [rows - 1, NONE];
  const candidates = (): readonly number[] => {
    if (numbers.kinds <= LOOK_BACK) return [...piles.keys()];
    const seen = new Set<number>();
    for (let i = end, looked = 0; i >= 0 && looked < LOOK_BACK; i--) {
      if (taken[order[i]!]) continue;
      looked++;
      seen.add(numbers.kind[order[i]!]!);
    }
    return [...seen];
  };
  const chosen = (): number => {
    const same = current === NONE ? NONE : topOf(current);
    if (same !== NONE && may(same)) return same;
    while (taken[order[end]!]) end--;
    let [best, least] = [NONE, Infinity];
    const latest = Math.max(...total);
    for (const kind of candidates()) {
      const row = topOf(kind);
      if (row === NONE) continue;
      const price = (step(row) + 1e-3) / ready(piles[kind]!, numbers.latest, latest) ** greed;
      if (price >= least || !may(row)) continue;
      [best, least] = [row, price];
    }
    return best === NONE ? order[end]! : best;
  };
  for (let place = rows - 1; place >= 0; place--) {
    const row = chosen();
    take(row);
    current = numbers.kind[row]!;
    made[place] = row;
  }
  return made;
}

const differ = (one: number, other: number): number => (one >= 0 && other >= 0 && one !== other ? 1 : 0);

/** Of a pile, those on top that may end at that time; 1 at least. */
function ready(pile: readonly number[], latest: Float64Array, time: number): number {
  let [low, high] = [0, pile.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (latest[pile[middle]!]! >= time) high = middle;
    else low = middle + 1;
  }
  return Math.max(1, pile.length - low);
}

/** Of each kind its rows, the one that may stand last on top. */
function pilesOf({ kind, kinds, latest }: Numbers, order: Int32Array): number[][] {
  const piles: number[][] = Array.from({ length: kinds }, () => []);
  for (const row of order) piles[kind[row]!]!.push(row);
  // Stable: what is due alike stays as it stood.
  for (const pile of piles) pile.sort((a, b) => (latest[a] === latest[b] ? 0 : latest[a]! - latest[b]!));
  return piles;
}

/** Minutes by station of all rows, with the changeovers of the order they stand in. */
function totalsOf({ stations, text, work, change }: Numbers, order: Int32Array): Float64Array {
  const total = new Float64Array(stations);
  for (let station = 0; station < stations; station++) {
    let set = NONE;
    for (const row of order) {
      const cell = row * stations + station;
      total[station]! += differ(set, text[cell]!) * change[station]! + work[cell]!;
      if (text[cell] !== NONE) set = text[cell]!;
    }
  }
  return total;
}

interface Left {
  /** By cell, the row before and after it that is set up at that station. */
  readonly before: Int32Array;
  readonly after: Int32Array;
  /** By station, the last row. */
  readonly tail: Int32Array;
  readonly drop: (row: number) => void;
}

function leftOf({ rows, stations, text }: Numbers, order: Int32Array): Left {
  const before = new Int32Array(rows * stations).fill(NONE);
  const after = new Int32Array(rows * stations).fill(NONE);
  const tail = new Int32Array(stations).fill(NONE);
  for (const row of order) {
    for (let station = 0; station < stations; station++) {
      const cell = row * stations + station;
      if (text[cell] === NONE) continue;
      before[cell] = tail[station]!;
      if (tail[station] !== NONE) after[tail[station]! * stations + station] = row;
      tail[station] = row;
    }
  }
  const drop = (row: number): void => {
    for (let station = 0; station < stations; station++) {
      const cell = row * stations + station;
      if (text[cell] === NONE) continue;
      const [prior, next] = [before[cell]!, after[cell]!];
      if (prior !== NONE) after[prior * stations + station] = next;
      if (next === NONE) tail[station] = prior;
      else before[next * stations + station] = prior;
    }
  };
  return { before, after, tail, drop };
}
