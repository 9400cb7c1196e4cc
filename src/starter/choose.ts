/** Rows of the plant a first spec can be built on: the first that fit. */
import type { Use } from '../facts/facts.ts';
import { namesOf, row, wanted } from '../facts/row.ts';
import type { PlantSpec } from '../facts/spec.generated.ts';
import type { Length } from '../units/quantity.ts';

type Table = 'machines' | 'cutters' | 'fixtures' | 'jigs' | 'lines' | 'stock' | 'finishes';

/** Names of a table that are not retired, by name: in which order the plant gives its rows says nothing. */
export function inUse(plant: PlantSpec, table: Table): readonly string[] {
  const rows = plant[table] as Readonly<Record<string, { readonly retired?: unknown }>> | undefined;
  return namesOf(rows).filter((name) => rows![name]!.retired === undefined);
}

/** The first name that fits; where none does, what is missing is named and the reading stops. */
export function first(plant: PlantSpec, table: Table, fits: (name: string) => boolean, what: string): string {
  return wanted(inUse(plant, table).find(fits), what);
}

export const router = (plant: PlantSpec, use: Use): string =>
  first(
    plant,
    'machines',
    (name) => {
      const machine = row(plant.machines, name, 'plant.machines');
      return use(machine.kind) === 'router' && machine['depth-error'] !== undefined;
    },
    'a router with its depth error in plant.machines',
  );

type CutterKind = 'end-mill' | 'ball' | 'facing' | 'drill';

/** The thickest cutter of a kind up to a diameter that reaches as deep as this, both in nanometres. */
export function cutter(plant: PlantSpec, use: Use, kind: CutterKind, most: number, reach: number): string {
  const of = (name: string) => row(plant.cutters, name, 'plant.cutters');
  const diameter = (name: string) => use(of(name).diameter).value;
  const fits = inUse(plant, 'cutters')
    .filter((name) => use(of(name).kind) === kind && diameter(name) <= most && use(of(name).reach).value >= reach)
    .toSorted((a, b) => diameter(b) - diameter(a));
  return wanted(fits[0], `a ${kind} in plant.cutters that reaches ${Math.ceil(reach / 1e6)} mm`);
}

/** The end mill up to a diameter that reaches deepest. */
export function longest(plant: PlantSpec, use: Use, most: number): string {
  const of = (name: string) => row(plant.cutters, name, 'plant.cutters');
  const reach = (name: string) => use(of(name).reach).value;
  const fits = inUse(plant, 'cutters')
    .filter((name) => use(of(name).kind) === 'end-mill' && use(of(name).diameter).value <= most)
    .toSorted((a, b) => reach(b) - reach(a));
  return wanted(fits[0], 'an end mill in plant.cutters');
}

export interface Stock {
  readonly name: string;
  readonly species: string;
  readonly least: Length;
}

/** Stock by its least thickness, the thickest first. */
export const stocks = (plant: PlantSpec, use: Use): readonly Stock[] =>
  inUse(plant, 'stock')
    .map((name) => {
      const of = row(plant.stock, name, 'plant.stock');
      return { name, species: use(of.species), least: use(of['least-thickness']) };
    })
    .toSorted((a, b) => b.least.value - a.least.value);
