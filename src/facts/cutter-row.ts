/** The row of a cutter, asked for what it may lack. */
import type { Use } from './facts.ts';
import type { Leaf } from './leaf.ts';
import { row, wanted } from './row.ts';
import type { PlantSpec } from './spec.generated.ts';

export type CutterRow = NonNullable<PlantSpec['cutters']>[string];

export interface Cutter {
  readonly id: string;
  readonly row: CutterRow;
  /** A number of it, or a hole that says which is missing. */
  readonly need: <K extends keyof CutterRow>(key: K) => NonNullable<CutterRow[K]>;
}

export function cutterRow(plant: PlantSpec, id: string): Cutter {
  const found = row(plant.cutters, id, 'plant.cutters');
  return {
    id,
    row: found,
    need: (key) => wanted(found[key], `plant.cutters.${id}.${key}`) as NonNullable<CutterRow[typeof key]>,
  };
}

export const cutterOf = (plant: PlantSpec, use: Use, name: Leaf<string>): Cutter => cutterRow(plant, use(name));

/** A drill without a speed is driven by hand. */
export const byHand = ({ row: { speed } }: Cutter): boolean => speed === undefined;
