/** What the plant still does with a piece that is out, as far as a model can use it. */
import type { Use } from './facts.ts';
import { namesOf, row } from './row.ts';
import type { PlantSpec } from './spec.generated.ts';
import type { Subject } from './subject.ts';

export type ReworkRow = NonNullable<PlantSpec['reworks']>[string];

export interface Rework {
  readonly id: string;
  readonly row: ReworkRow;
}

/** Rows for what is found out at a station, in the order of the plant; those that need a finish only where this model has it. */
export function reworksAt({ spec, plant }: Subject, use: Use, station: string): readonly Rework[] {
  const kinds = spec.finishes.map((finish) => use(row(plant.finishes, use(finish), 'plant.finishes').kind));
  return namesOf(plant.reworks).flatMap((id) => {
    const one = plant.reworks![id]!;
    const here = one.at.some((at) => use(at) === station);
    const hidden = !one.under || one.under.some((kind) => kinds.includes(use(kind)));
    return here && hidden ? [{ id, row: one }] : [];
  });
}

/** What is measured for its thickness, from part to body. */
export const REWORK_THINGS = ['cap', 'back', 'slab', 'blank', 'faced', 'machined'] as const;
export type ReworkThing = (typeof REWORK_THINGS)[number];

/** Id under which the numbers of a row stand for one thing at one station. */
export const reworkOf = (id: string, station: string, thing: ReworkThing) =>
  `rework.${id}.${station}.${thing}` as const;
