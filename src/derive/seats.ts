/** Holes that locate a set-up, each with the pin of the fixture that goes into it. */
import type { SetupId } from '../facts/cutting-order.ts';
import type { Use } from '../facts/facts.ts';
import type { Leaf } from '../facts/leaf.ts';
import { hole } from '../facts/leaf.ts';
import { namesOf, row } from '../facts/row.ts';
import type { Plant } from '../facts/spec.generated.ts';
import type { Subject } from '../facts/subject.ts';
import type { FitClass } from '../reference/fits.ts';
import { deviationsOf } from '../reference/fits.ts';
import type { Length } from '../units/quantity.ts';
import { combine, withCauses } from '../units/arithmetic.ts';
import { toMm } from './lengths.ts';
import { setupOf } from './surfaces.ts';

export type Pin = NonNullable<NonNullable<NonNullable<Plant.PlantSpec['fixtures']>[string]['pins']>[string]>;

/** A hole that a set-up locates on, where it lies. */
export interface Datum {
  /** Name of the hole. */
  readonly id: string;
  readonly xMm: number;
  readonly yMm: number;
  /** The set-up that drilled it; nothing of a hole of the drilling jig. */
  readonly drilled: SetupId | undefined;
}

/** What the hole and the pin of the fixture that goes into it measure. */
export interface Seat {
  readonly diameter: Leaf<Length>;
  readonly fit?: Leaf<FitClass> | undefined;
  /** Nothing where the fixture does not say. */
  readonly pin: Pin | undefined;
  /** Where the pin stands in the plant. */
  readonly pinRow: string;
}

/** The two holes farthest apart of all a set-up locates on: the one with the round pin first. Nothing where it has no two. */
export function datumPair(subject: Subject, use: Use, setup: SetupId): readonly [Datum, Datum] | undefined {
  const datums = datumsIn(subject, use, setup);
  let best: { readonly pair: readonly [Datum, Datum]; readonly apart: number } | undefined;
  datums.forEach((a, i) =>
    datums.slice(i + 1).forEach((b) => {
      const apart = Math.hypot(a.xMm - b.xMm, a.yMm - b.yMm);
      if (apart > 0 && (!best || apart > best.apart)) best = { pair: [a, b], apart };
    }),
  );
  if (!best) return undefined;
  const [a, b] = best.pair;
  const isRound = ({ id }: Datum) => !isDiamond(use, seatOf(subject, use, setup, id));
  return !isRound(a) && isRound(b) ? [b, a] : [a, b];
}

/** In the order of the spec. */
function datumsIn({ spec, plant }: Subject, use: Use, setup: SetupId): readonly Datum[] {
  const { pins: pattern, 'locates-on': located } = setupOf(spec, setup);
  if (pattern) {
    const { holes } = row(plant.patterns, use(pattern), 'plant.patterns');
    return namesOf(holes).map((id) => {
      const { at } = holes[id]!;
      return { id, xMm: toMm(use(at.x)), yMm: toMm(use(at.y)), drilled: undefined };
    });
  }
  return (located ?? []).map((leaf) => {
    const id = use(leaf);
    const { xMm, yMm } = use.fact(`hole.${id}.spot`);
    return { id, xMm, yMm, drilled: use(row(spec.holes, id, 'holes').setup) as SetupId };
  });
}

/** Of a hole that the set-up locates on, by its name. */
export function seatOf(subject: Subject, use: Use, setup: SetupId, id: string): Seat {
  const name = use(setupOf(subject.spec, setup).fixture);
  const { pins } = row(subject.plant.fixtures, name, 'plant.fixtures');
  const pin = pins && Object.hasOwn(pins, id) ? pins[id] : undefined;
  return { ...drawnHole(subject, use, setup, id), pin, pinRow: `plant.fixtures.${name}.pins.${id}` };
}

/** The hole alone, as drawn. */
export function drawnHole({ spec, plant }: Subject, use: Use, setup: SetupId, id: string) {
  const { pins: pattern } = setupOf(spec, setup);
  if (!pattern) return { diameter: row(spec.holes, id, 'holes').diameter, fit: undefined };
  return row(row(plant.patterns, use(pattern), 'plant.patterns').holes, id, 'plant.patterns.holes');
}

export const isDiamond = (use: Use, { pin }: Seat): boolean => pin?.kind !== undefined && use(pin.kind) === 'diamond';

/** A diameter within its fit class, or within the limits it was given; its causes are those limits. */
export function within(
  use: Use,
  given: Leaf<Length> | undefined,
  fit: Leaf<FitClass> | undefined,
  nominal: Length,
  id: string,
) {
  if (fit) {
    const deviations = deviationsOf(use(fit), toMm(nominal));
    if (!deviations) return use<Length>(hole(fit.id));
    const [high, low] = deviations.map((um) => um * 1000) as [number, number];
    const half = (high - low) / 2;
    const middle: Length = { kind: 'length', value: nominal.value + (high + low) / 2, unit: nominal.unit, decimals: 3 };
    return withCauses(middle, [{ cause: fit.id, sensitivity: 1, minus: -half, plus: half }]);
  }
  const q = given && use(given);
  return q?.causes && q.causes.length > 0 ? q : use<Length>(hole(id));
}

/** Diameter of the hole: its fit class, else its own limits. */
export const holeOf = (use: Use, { diameter, fit }: Seat): Length =>
  within(use, diameter, fit, use(diameter), `${diameter.id.replace(/\.diameter$/, '')}.fit`);

/** Diameter of the pin: its fit class about the hole as drawn, else its own limits. */
export const pinOf = (use: Use, { diameter, pin, pinRow }: Seat): Length =>
  within(use, pin?.diameter, pin?.fit, use(diameter), `${pinRow}.fit`);

/** Hole less pin: least and most. */
export const clearanceOf = (use: Use, seat: Seat): Length =>
  combine({ factor: 1, of: holeOf(use, seat) }, { factor: -1, of: pinOf(use, seat) });
