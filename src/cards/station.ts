/** What a file of src/cards/stations/ exports: one station with everything about it. */
import type { DerivedFacts, Use } from '../facts/facts.ts';
import type { Leaf } from '../facts/leaf.ts';
import type { Part } from '../facts/parts.ts';
import type { PlantSpec } from '../facts/spec.generated.ts';
import type { Subject } from '../facts/subject.ts';
import type { Arg, CardBody, Figure, Limits, Line, Name } from './card.ts';
import type { FigureStyle, Gauge, Ref } from './figures.ts';

export interface Station {
  /** Its id in the plant's route. */
  readonly id: string;
  /** Whether a body passes it: follows from pieces, halves and cap. */
  readonly on: (route: RouteOf) => boolean;
  /** Stations whose work it takes up: a body that passes them has passed them before. */
  readonly after: readonly string[];
  /** Kinds of machine it works with; none given where it works by hand, or with any. */
  readonly machines?: readonly string[];
  /** Off the route: no body passes it on its way. Its card is made where the plant has a row for it. */
  readonly aside?: true;
  readonly card: (desk: Desk) => CardBody;
  /** Columns of the station sheet and this model's cells in them; `others`: the desks of all other models there. */
  readonly sheet: {
    readonly columns: readonly string[];
    readonly cells: (desk: Desk, others: readonly Desk[]) => readonly Arg[];
  };
}

/** What decides a route. */
export interface RouteOf {
  readonly parts: readonly Part[];
  /** Set-ups the model has. */
  readonly setups: readonly string[];
  /** Pieces of each part. */
  readonly pieces: Readonly<Partial<Record<Part, number>>>;
}

export type StationRow = NonNullable<PlantSpec['stations']>[string];

/** What a station works with while its card is made. */
export interface Desk {
  readonly subject: Subject;
  readonly use: Use;
  readonly has: (id: string) => id is keyof DerivedFacts;
  readonly route: RouteOf;
  /** Id of the station. */
  readonly station: string;
  /** Ids of the stations on its route, read from the plant: what follows from them goes back to it. */
  readonly stations: () => readonly string[];
  readonly row: StationRow;
  /** The machine at this station. */
  readonly machine: () => Name;
  /** The gauge this station has for a role. */
  readonly gauge: (role: string) => Gauge;
  /**
   * A number with limits as the gauge of that role reads them, with acceptance limits where the plant asks for them. A
   * gauge that cannot is a finding.
   */
  readonly limits: (ref: Ref, role: string) => Limits;
  /** The same of what nobody accepts by at this station: what comes in, a difference of two readings. */
  readonly span: (ref: Ref, role: string) => Limits;
  readonly figure: (ref: Ref, style?: FigureStyle) => Figure;
  readonly name: (leaf: Leaf<string>) => Name;
}

/** A sentence of the words file with what goes into it. */
export const say = (id: string, args: Readonly<Record<string, Arg>> = {}): Line => ({
  kind: 'line',
  say: id,
  with: args,
});
