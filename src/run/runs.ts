/** Rows of one kind that follow each other, taken together as one row: a long list becomes a short one. */
import type { Numbers } from './numbers.ts';

export interface Runs {
  readonly numbers: Numbers;
  /** The single rows of a sequence of runs. */
  readonly single: (order: Int32Array) => Int32Array;
}

/**
 * In the order given, the runs being numbered from 0 on. Within a run what may wait longest comes last: at every station that
 * keeps each limit if any order within the run does.
 */
export function runsOf(numbers: Numbers, order: Int32Array): Runs {
  const { stations, text, work, limit, latest, change, kind, kinds } = numbers;
  const runs: number[][] = [];
  order.forEach((row, place) => {
    if (place > 0 && kind[order[place - 1]!] === kind[row]) runs.at(-1)!.push(row);
    else runs.push([row]);
  });
  for (const run of runs) run.sort((a, b) => (latest[a] === latest[b] ? a - b : latest[a]! - latest[b]!));
  const made: Numbers = {
    rows: runs.length,
    stations,
    text: new Int32Array(runs.length * stations),
    work: new Float64Array(runs.length * stations),
    limit: new Float64Array(runs.length * stations).fill(Infinity),
    latest: Float64Array.from(runs, ([first]) => latest[first!]!),
    change,
    kind: Int32Array.from(runs, ([first]) => kind[first!]!),
    kinds,
  };
  runs.forEach((run, index) => {
    for (let s = 0; s < stations; s++) {
      const cell = index * stations + s;
      made.text[cell] = text[run[0]! * stations + s]!;
      for (const row of run) made.work[cell]! += work[row * stations + s]!;
      let gone = 0;
      for (const row of run) {
        gone += work[row * stations + s]!;
        made.limit[cell] = Math.min(made.limit[cell]!, limit[row * stations + s]! + made.work[cell]! - gone);
      }
    }
  });
  const single = (sequence: Int32Array): Int32Array => Int32Array.from([...sequence].flatMap((run) => runs[run]!));
  return { numbers: made, single };
}
