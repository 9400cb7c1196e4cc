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

/** A hole of the pattern, or one of the body that an earlier set-up drilled, and its pin. */
export interface Seat {
  /** Name of the hole. */
  readonly id: string;
  readonly xMm: number;
  readonly yMm: number;
  readonly diameter: Leaf<Length>;
  readonly fit: Leaf<FitClass> | undefined;
  /** The set-up that drilled it; nothing of a hole of the drilling jig. */
  readonly drilled: SetupId | undefined;
  /** Nothing where the fixture does not say. */
  readonly pin: Pin | undefined;
}

/** All holes a set-up locates on, in the order of the spec. */
export function seatsOf({ spec, plant }: Subject, use: Use, setup: SetupId): readonly Seat[] {
  const { pins: pattern, 'locates-on': located, fixture } = setupOf(spec, setup);
  const name = use(fixture);
  const pins = row(plant.fixtures, name, 'plant.fixtures').pins;
  const pinOf = (id: string) => (pins && Object.hasOwn(pins, id) ? pins[id] : undefined);
  if (pattern) {
    const { holes } = row(plant.patterns, use(pattern), 'plant.patterns');
    return namesOf(holes).map((id) => {
      const { at, diameter, fit } = holes[id]!;
      const [xMm, yMm] = [toMm(use(at.x)), toMm(use(at.y))];
      return { id, xMm, yMm, diameter, fit, drilled: undefined, pin: pinOf(id) };
    });
  }
  return (located ?? []).map((leaf) => {
    const id = use(leaf);
    const own = row(spec.holes, id, 'holes');
    const { xMm, yMm } = use.fact(`hole.${id}.spot`);
    return {
      id,
      xMm,
      yMm,
      diameter: own.diameter,
      fit: undefined,
      drilled: use(own.setup) as SetupId,
      pin: pinOf(id),
    };
  });
}

/** The two that lie farthest apart: the one with the round pin first. Nothing of a single hole. */
export function datumPair(use: Use, seats: readonly Seat[]): readonly [Seat, Seat] | undefined {
  let best: { readonly pair: readonly [Seat, Seat]; readonly apart: number } | undefined;
  seats.forEach((a, i) =>
    seats.slice(i + 1).forEach((b) => {
      const apart = Math.hypot(a.xMm - b.xMm, a.yMm - b.yMm);
      if (apart > 0 && (!best || apart > best.apart)) best = { pair: [a, b], apart };
    }),
  );
  if (!best) return undefined;
  const [a, b] = best.pair;
  return isDiamond(use, a) && !isDiamond(use, b) ? [b, a] : [a, b];
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
export function pinOf(use: Use, { diameter, pin }: Seat, row: string): Length {
  return within(use, pin?.diameter, pin?.fit, use(diameter), `${row}.fit`);
}

/** Hole less pin: least and most. */
export const clearanceOf = (use: Use, seat: Seat, row: string): Length =>
  combine({ factor: 1, of: holeOf(use, seat) }, { factor: -1, of: pinOf(use, seat, row) });
