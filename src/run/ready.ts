/** What each station has to have ready before the run begins: once each, with how many orders want it. Pure. */
import type { Admitted } from './admit.ts';
import { neededFor } from './set-up.ts';
import type { Needed } from './set-up.ts';

export interface Ready extends Needed {
  readonly orders: readonly string[];
}

export interface ReadyAt {
  readonly station: string;
  /** Its name. */
  readonly name: string;
  readonly things: readonly Ready[];
}

/** `sequence`: the orders as they will be worked through, so that what is wanted first stands first. */
export function readyFor(sequence: readonly Admitted[], route: readonly string[]): readonly ReadyAt[] {
  const stations = new Map<string, { name: string; things: Map<string, Needed & { orders: string[] }> }>();
  for (const { order, by } of sequence)
    for (const card of by.cards) {
      const at = stations.get(card.key.station) ?? { name: card.station, things: new Map() };
      stations.set(card.key.station, at);
      for (const needed of neededFor(card, by)) {
        const key = `${needed.of} ${needed.id}`;
        const thing = at.things.get(key) ?? { ...needed, orders: [] };
        at.things.set(key, thing);
        thing.orders.push(order.number);
      }
    }
  return inRoute([...stations], route).flatMap(([station, { name, things }]) =>
    things.size === 0 ? [] : [{ station, name, things: [...things.values()] }],
  );
}

/** Stations in the order of the route; those it does not name come last, as they were met. */
export function inRoute<T>(stations: readonly (readonly [string, T])[], route: readonly string[]) {
  const place = (station: string) => (route.includes(station) ? route.indexOf(station) : route.length);
  return stations.toSorted(([a], [b]) => place(a) - place(b));
}
