/** The rows of the plant a body is pressed by: its press, its adhesive, the spreader before it. */
import type { Use } from './facts.ts';
import { row, wanted } from './row.ts';
import type { PlantSpec } from './spec.generated.ts';
import type { Subject } from './subject.ts';
import type { Leaf } from './leaf.ts';

export type Machine = NonNullable<PlantSpec['machines']>[string];
export type Adhesive = NonNullable<PlantSpec['adhesives']>[string];

/** A row with its name, to ask it for what it may lack. */
export interface Asked<Row> {
  readonly id: string;
  readonly row: Row;
  /** A field of it, or a hole that says which is missing. */
  readonly need: <T>(key: string, of: (row: Row) => Leaf<T> | undefined) => Leaf<T>;
}

const asked = <Row>(id: string, found: Row): Asked<Row> => ({
  id,
  row: found,
  need: (key, of) => wanted(of(found), `${id}.${key}`),
});

/** The machine that stands at a station. */
export function machineAt({ plant }: Subject, use: Use, station: 'press' | 'lamination'): Asked<Machine> {
  const { machine } = row(plant.stations, station, 'plant.stations');
  const name = use(wanted(machine, `plant.stations.${station}.machine`));
  return asked(`plant.machines.${name}`, row(plant.machines, name, 'plant.machines'));
}

/** The adhesive of the line for cap on back. */
export function laminationAdhesive({ spec, plant }: Subject, use: Use): Asked<Adhesive> {
  const line = use(spec.line);
  const name = use(wanted(row(plant.lines, line, 'plant.lines').adhesive, `plant.lines.${line}.adhesive`));
  return asked(`plant.adhesives.${name}`, row(plant.adhesives, name, 'plant.adhesives'));
}
