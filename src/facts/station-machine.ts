/** The machine and the gauges of a station. */
import type { Use } from './facts.ts';
import { row, wanted } from './row.ts';
import type { PlantSpec } from './spec.generated.ts';

export type Machine = NonNullable<PlantSpec['machines']>[string];
export type GaugeRow = NonNullable<PlantSpec['gauges']>[string];

/** The row of the machine that stands at a station. */
export const machineAt = (plant: PlantSpec, use: Use, station: string): Machine =>
  row(plant.machines, machineName(plant, use, station), 'plant.machines');

/** A number its row must have: the number, or a hole that says which is missing. */
export function machineNumber<K extends keyof Machine>(
  plant: PlantSpec,
  use: Use,
  station: string,
  key: K,
): NonNullable<Machine[K]> {
  const name = machineName(plant, use, station);
  return wanted(row(plant.machines, name, 'plant.machines')[key], `plant.machines.${name}.${key}`) as NonNullable<
    Machine[K]
  >;
}

function machineName(plant: PlantSpec, use: Use, station: string): string {
  return use(wanted(row(plant.stations, station, 'plant.stations').machine, `plant.stations.${station}.machine`));
}

/** The gauge a station has for a role. */
export function gaugeAt(plant: PlantSpec, use: Use, station: string, role: string): GaugeRow {
  const named = row(plant.stations, station, 'plant.stations').gauges?.[role];
  return row(plant.gauges, use(wanted(named, `plant.stations.${station}.gauges.${role}`)), 'plant.gauges');
}
