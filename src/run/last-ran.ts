/** When each model of a run last ran, and by which release: what changed since is what nobody on the floor has made yet. Pure. */
import type { Entry, RunAct } from '../release/entries.ts';
import type { Known } from '../release/wall.ts';
import type { Admitted } from './admit.ts';

export interface LastRan {
  /** The release it is made by now. */
  readonly now: Known;
  /** YYYY-MM-DD and the release then; absent where the ledger has no run of it. */
  readonly before?: { readonly on: string; readonly of: Known };
}

/** Each release of the run once, in its sequence. `entries`: the ledger up to the day. */
export function lastRan(
  admitted: readonly Admitted[],
  entries: readonly Entry[],
  known: readonly Known[],
  on: string,
): readonly LastRan[] {
  const runs = entries.filter((entry): entry is RunAct => entry.act === 'run' && entry.on <= on);
  return [...new Set(admitted.map(({ by }) => by.of))].map((now): LastRan => {
    const { model } = now.released;
    const run = runs.findLast(({ by }) => by.some((one) => one.model === model));
    // Of two releases that ran on one list the later is what the floor made last.
    const revision = run?.by.findLast((one) => one.model === model)?.revision;
    const of = known.find(({ released }) => released.model === model && released.revision === revision);
    return { now, ...(run && of ? { before: { on: run.on, of } } : {}) };
  });
}

/** Orders of this list that the ledger says were begun already. */
export function begunBefore(admitted: readonly Admitted[], entries: readonly Entry[]): ReadonlyMap<string, string> {
  const begun = new Map(
    entries.flatMap((entry) => (entry.act === 'run' ? entry.orders.map((number) => [number, entry.on] as const) : [])),
  );
  return new Map(
    admitted.flatMap(({ order: { number } }) => (begun.has(number) ? [[number, begun.get(number)!] as const] : [])),
  );
}
