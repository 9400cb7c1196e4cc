/**
 * Why a set-up as a whole may lie off sideways: the play of its pins, and how far off the holes it locates on were drilled.
 *
 * Set-ups hang on each other: one that is pinned through the holes of the jig hangs on those, one that locates on holes of
 * the body hangs on the set-up that drilled them. Two cuts see only what lies on the way between their set-ups: of one
 * set-up nothing, for its error moves both alike; of two, not what both have in common.
 */
import type { Cut } from '../facts/cuts.ts';
import { cutId } from '../facts/cuts.ts';
import type { SetupId } from '../facts/cutting-order.ts';
import type { Use } from '../facts/facts.ts';
import type { Subject } from '../facts/subject.ts';
import { reachOf } from '../geometry/two-pin.ts';
import { mergedCauses, scaledCauses, worstCase } from '../units/arithmetic.ts';
import type { Cause } from '../units/quantity.ts';
import type { Datum } from './seats.ts';
import { placeError, setupOf } from './surfaces.ts';

export interface Place {
  readonly xMm: number;
  readonly yMm: number;
}

/** What is cut: a cut by its id, the perimeter, the carve. */
export interface Side {
  readonly setup: SetupId;
  readonly cut: string;
}

export const sideOf = (use: Use, cut: Cut): Side => ({ setup: use(cut.spec.setup) as SetupId, cut: cutId(cut) });

export const perimeterOf = (setup: SetupId): Side => ({ setup, cut: `perimeter.${setup}` });

/** Set-ups that cut the perimeter. */
export const perimetersOf = ({ spec }: Subject): readonly Side[] =>
  (['back', 'top'] as const).filter((id) => setupOf(spec, id).cutters?.perimeter !== undefined).map(perimeterOf);

/** How far two cuts may lie off sideways, one against the other, at a place. */
export const apartCauses = (subject: Subject, use: Use, a: Side, b: Side, at: Place): readonly Cause[] =>
  mergedCauses([
    ...placeError(subject, use, a.setup, a.cut),
    ...placeError(subject, use, b.setup, b.cut),
    ...setupsApart(subject, use, a.setup, b.setup, at),
  ]);

/** The worst of several. */
export function worstOf(options: readonly (readonly Cause[])[]): readonly Cause[] {
  const width = (causes: readonly Cause[]) => worstCase(causes).plus - worstCase(causes).minus;
  return options.reduce<readonly Cause[]>((worst, one) => (width(one) > width(worst) ? one : worst), []);
}

/** How far two set-ups may lie off, one against the other, at a place: what lies on the way between them. */
export function setupsApart(subject: Subject, use: Use, a: SetupId, b: SetupId, at: Place): readonly Cause[] {
  return apartAlong(subject, use, a, b, at, []);
}

/**
 * `within` are the set-ups being asked for already: one that locates on its own hole, or two that locate on each other's,
 * are another check's, and would never end here.
 */
function apartAlong(
  subject: Subject,
  use: Use,
  a: SetupId,
  b: SetupId,
  at: Place,
  within: readonly SetupId[],
): readonly Cause[] {
  if (a === b) return [];
  const [up, down] = [wayUp(use, a), wayUp(use, b)];
  const apart = [...up.filter((id) => !down.includes(id)), ...down.filter((id) => !up.includes(id))];
  return mergedCauses(
    apart.filter((id) => !within.includes(id)).flatMap((id) => causesOf(subject, use, id, at, [...within, id])),
  );
}

/** A set-up, what it hangs on, what that hangs on. */
function wayUp(use: Use, setup: SetupId, seen: readonly SetupId[] = []): readonly SetupId[] {
  if (seen.includes(setup)) return seen;
  const above = use.fact(`location.${setup}.datums`)?.find(({ drilled }) => drilled !== undefined)?.drilled;
  return above === undefined ? [...seen, setup] : wayUp(use, above, [...seen, setup]);
}

/** How far a set-up may lie off against what it hangs on, at a place. */
export const setupCauses = (subject: Subject, use: Use, setup: SetupId, at: Place): readonly Cause[] =>
  causesOf(subject, use, setup, at, [setup]);

function causesOf(subject: Subject, use: Use, setup: SetupId, at: Place, within: readonly SetupId[]): readonly Cause[] {
  const datums = use.fact(`location.${setup}.datums`);
  if (!datums) return [];
  const [first, second] = datums;
  const reach = reachOf(first, second, at);
  return mergedCauses([
    ...scaledCauses(datumCauses(subject, use, setup, 'first', first), reach.first),
    ...scaledCauses(datumCauses(subject, use, setup, 'second', second), reach.second),
    // A second hole that yet another set-up drilled lies off with that.
    ...(first.drilled && second.drilled
      ? scaledCauses(apartAlong(subject, use, first.drilled, second.drilled, second, within), reach.second)
      : []),
  ]);
}

export type Which = 'first' | 'second';

/** How far the body may move at one pin: half its play, and how far off the hole was drilled. */
function datumCauses(subject: Subject, use: Use, setup: SetupId, which: Which, datum: Datum): readonly Cause[] {
  const id = `location.${setup}.${which}-play` as const;
  const play = use.fact(id);
  const half = Math.max(0, play?.high ?? play?.value ?? 0) / 2;
  return [
    ...(half > 0 ? [{ cause: id, sensitivity: 1, minus: -half, plus: half }] : []),
    ...(datum.drilled ? placeError(subject, use, datum.drilled, `hole.${datum.id}`) : []),
  ];
}
