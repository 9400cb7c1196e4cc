/** The best of a list by looking at all its sequences, each only as far as it keeps the rule. */
import type { Job } from '../../src/run/sequence.ts';
import { byHand } from './lists.ts';
import type { Listed } from './lists.ts';

export interface Best {
  readonly minutes: number;
  readonly count: number;
  /** Places between where the orders stand and where they stood in the list, summed up. */
  readonly strayed: number;
}

/** Nothing is left out but what has broken the rule already or has more minutes than the best so far: changeovers only add up. */
export function bestOfAll({ jobs, floor }: Listed): Best {
  const own = byHand(jobs, floor);
  const stations = [...new Set(jobs.flatMap((job) => [...job.setUps.keys(), ...job.minutes.keys()]))];
  const minutesOf = stations.map((station) => floor.changeover.get(station) ?? 0);
  const rows = jobs.map((job, place) => ({
    place,
    last: job.due === undefined ? Infinity : Math.max(job.due, own.done[place]!),
    at: stations.map((station) => ({ text: job.setUps.get(station), work: job.minutes.get(station) })),
  }));
  let best: Best = { minutes: Infinity, count: 0, strayed: 0 };
  const walk = (
    left: readonly (typeof rows)[number][],
    clocks: readonly number[],
    standing: readonly (string | undefined)[],
    sum: Best,
  ): void => {
    if (left.length === 0) {
      if (lower(sum, best)) best = sum;
      return;
    }
    for (const row of left) {
      let [minutes, count, kept] = [sum.minutes, sum.count, true];
      const turned = clocks.map((clock, s) => {
        const { text, work } = row.at[s]!;
        const turns = text !== undefined && standing[s] !== undefined && standing[s] !== text;
        if (turns) [minutes, count] = [minutes + minutesOf[s]!, count + 1];
        const time = clock + (turns ? minutesOf[s]! : 0) + (work ?? 0);
        if ((text ?? work) !== undefined && time > (row.last + 1 + 1e-6) * floor.shift) kept = false;
        return time;
      });
      if (!kept || minutes > best.minutes) continue;
      const place = jobs.length - left.length;
      const next = row.at.map(({ text }, s) => text ?? standing[s]);
      const strayed = sum.strayed + Math.abs(row.place - place);
      walk(
        left.filter((other) => other !== row),
        turned,
        next,
        { minutes, count, strayed },
      );
    }
  };
  const none = stations.map(() => undefined);
  walk(
    rows,
    stations.map(() => 0),
    none,
    { minutes: 0, count: 0, strayed: 0 },
  );
  return best;
}

const lower = (one: Best, other: Best): boolean =>
  one.minutes !== other.minutes
    ? one.minutes < other.minutes
    : one.count !== other.count
      ? one.count < other.count
      : one.strayed < other.strayed;

/** Places between where the orders stand in a plan and in the list, summed up. */
export const strayedIn = (jobs: readonly Job[], order: readonly string[]): number =>
  jobs.reduce((sum, { id }, place) => sum + Math.abs(order.indexOf(id) - place), 0);
