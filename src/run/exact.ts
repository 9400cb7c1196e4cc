/** The best of all sequences of a short list, by branch and bound. */
import type { Cost, Numbers } from './numbers.ts';
import { costOf, isBetter } from './numbers.ts';

/** `own`: the list’s order, which keeps the limits. Rows are tried as they stand there, and the first of equals is kept. */
export function exactly(numbers: Numbers, own: Int32Array): Int32Array {
  const { rows, stations, text, work, limit, change } = numbers;
  let best = own;
  let bound = costOf(numbers, own);
  const order = new Int32Array(rows);
  const clocks = new Float64Array((rows + 1) * stations);
  const sets = new Int32Array((rows + 1) * stations).fill(-1);
  const textsOf = textsByRest(numbers);

  /** Puts a row at a place; the changeovers that takes, or undefined where a limit is broken. */
  const put = (place: number, row: number): { readonly minutes: number; readonly count: number } | undefined => {
    let [minutes, count] = [0, 0];
    for (let s = 0; s < stations; s++) {
      const [cell, here, next] = [row * stations + s, place * stations + s, (place + 1) * stations + s];
      const [needed, set] = [text[cell]!, sets[here]!];
      const turn = needed >= 0 && set >= 0 && needed !== set ? 1 : 0;
      count += turn;
      minutes += turn * change[s]!;
      clocks[next] = clocks[here]! + turn * change[s]! + work[cell]!;
      sets[next] = needed < 0 ? set : needed;
      if (clocks[next] > limit[cell]!) return undefined;
    }
    order[place] = row;
    return { minutes, count };
  };
  /** Every set-up still to come needs a changeover, but the one a station has. */
  const atLeast = (place: number, rest: number, { minutes, count, strayed }: Cost): Cost => {
    let [leastMinutes, leastCount] = [minutes, count];
    for (let s = 0; s < stations; s++) {
      const [set, coming] = [sets[place * stations + s]!, textsOf[rest * stations + s]!];
      const turns = set < 0 ? Math.max(0, ones(coming) - 1) : ones(coming & ~(1 << set));
      leastCount += turns;
      leastMinutes += turns * change[s]!;
    }
    return { minutes: leastMinutes, count: leastCount, strayed };
  };
  const branch = (place: number, rest: number, sum: Cost): void => {
    if (!isBetter(atLeast(place, rest, sum), bound)) return;
    if (rest === 0) {
      [best, bound] = [order.slice(), sum];
      return;
    }
    for (let row = 0; row < rows; row++) {
      if (!(rest & (1 << row))) continue;
      const turned = put(place, row);
      if (!turned) continue;
      branch(place + 1, rest & ~(1 << row), {
        minutes: sum.minutes + turned.minutes,
        count: sum.count + turned.count,
        strayed: sum.strayed + Math.abs(row - place),
      });
    }
  };
  branch(0, 2 ** rows - 1, { minutes: 0, count: 0, strayed: 0 });
  return best;
}

/** By set of rows and station, the texts among them, a bit each. */
function textsByRest({ rows, stations, text }: Numbers): Int32Array {
  const texts = new Int32Array(2 ** rows * stations);
  for (let rest = 1; rest < 2 ** rows; rest++) {
    const row = 31 - Math.clz32(rest);
    const others = rest & ~(1 << row);
    for (let s = 0; s < stations; s++) {
      const own = text[row * stations + s]!;
      texts[rest * stations + s] = texts[others * stations + s]! | (own < 0 ? 0 : 1 << own);
    }
  }
  return texts;
}

function ones(bits: number): number {
  let count = 0;
  for (let rest = bits; rest !== 0; rest &= rest - 1) count++;
  return count;
}
