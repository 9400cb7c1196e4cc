/** Pilots that name their screw: what the checks of screws have in common. */
import { namesOf, row } from '../facts/row.ts';
import type { Leaf } from '../facts/leaf.ts';
import type { Model } from '../facts/spec.generated.ts';
import type { Length } from '../units/quantity.ts';
import type { Bench } from './check.ts';
import { look } from './check.ts';
import { say } from './say.ts';

export interface Screwed {
  readonly id: string;
  readonly hole: Model.Hole & { readonly screw: Leaf<string> };
  readonly name: string;
  /** The number that says how long it is, and the one that says how much of that has thread. */
  readonly length: string;
  readonly thread: string | undefined;
}

/** Every hole with a screw that can be read. */
export function screwedHoles({ subject: { spec, plant }, facts }: Bench): readonly Screwed[] {
  return namesOf(spec.holes).flatMap((id) => {
    const hole = spec.holes![id]!;
    const { screw } = hole;
    if (!screw) return [];
    const seen = look(facts, (use) => {
      const { length, thread } = row(plant.screws, use(screw), 'plant.screws');
      return { name: use(screw), length: length.id, thread: thread?.id };
    });
    return seen ? [{ id, hole: { ...hole, screw }, ...seen }] : [];
  });
}

const FROM = {
  plant: 'measured by the plant',
  table: 'NDS table L3, from memory',
  'two-thirds': 'two-thirds of its shank, the average of the Wood Handbook',
} as const;

/** `the root of its thread is 2.87 mm (NDS table L3, from memory)`: which of the two sources was used is always said. */
export function sayRoot({ facts }: Bench, id: string, q: Length): string {
  const seen = look(facts, (use) => ({ root: use.fact(`screw.${id}.root`), from: use.fact(`screw.${id}.root-from`) }));
  return seen ? `the root of its thread is ${say(q, seen.root.value)} (${FROM[seen.from]})` : '';
}
