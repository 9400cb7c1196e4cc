/** Whether a body goes on both pins: how far its two holes may be drilled too near or too far apart, and what the pins take. */
import type { SetupId } from '../../facts/cutting-order.ts';
import { setupOrder } from '../../facts/cutting-order.ts';
import type { Use } from '../../facts/facts.ts';
import { practice } from '../../facts/facts.ts';
import { hole } from '../../facts/leaf.ts';
import { row } from '../../facts/row.ts';
import type { Subject } from '../../facts/subject.ts';
import { absorbedByDiamond } from '../../geometry/two-pin.ts';
import { subtract, worstCase } from '../../units/arithmetic.ts';
import type { Length } from '../../units/quantity.ts';
import { lengthOfMm } from '../lengths.ts';
import { datumsOf } from '../location.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';
import type { Seat } from '../seats.ts';
import { holeOf, isDiamond, pinOf, within } from '../seats.ts';
import { placeError, setupOf } from '../surfaces.ts';

declare module '../../facts/facts.ts' {
  interface DerivedFacts
    extends
      /** Nothing where neither jig nor machine say how far a hole may lie off. */
      Record<`location.${SetupId}.spacing-error`, Length | undefined>,
      /** Nothing where the fixture does not say what pins it has. */
      Record<`location.${SetupId}.spacing-taken`, Length | undefined> {}
}

const rule: Rule = (subject) =>
  setupOrder
    .filter((setup) => subject.spec.setups[setup] !== undefined)
    .flatMap((setup) => [
      derivation({
        id: `location.${setup}.spacing-error`,
        label: `set-up ${setup}: how far its two holes may be too near or too far apart`,
        formula:
          'of holes of the jig, half the play of the drill in each bushing; of holes of the body, how far the machine may put each off',
        source: practice('both off along their line, away from each other; worst case, no source'),
        value: (use) => errorOf(subject, use, setup),
      }),
      derivation({
        id: `location.${setup}.spacing-taken`,
        label: `set-up ${setup}: how far too near or too far apart two holes still go on its pins`,
        formula:
          'half the least play of the first, and of the second the same, or of a diamond (−w + √(w² + D² − d²))/2; w land, D smallest hole, d largest pin',
        source: practice('geometry of a rigid body on two pins; derived here, no source'),
        value: (use) => takenOf(subject, use, setup),
      }),
    ]);
export default rule;

const nm = (value: number): Length => ({ ...lengthOfMm(0, 3), value: Math.round(value) });

function errorOf(subject: Subject, use: Use, setup: SetupId): Length | undefined {
  const pair = datumsOf(subject, use, setup);
  if (!pair) return undefined;
  const each = pair.map((seat) =>
    seat.drilled
      ? worstCase(placeError(subject, use, seat.drilled, `hole.${seat.id}`)).plus
      : bushingPlay(subject, use, seat),
  );
  return each[0] === undefined || each[1] === undefined ? undefined : nm(each[0] + each[1]);
}

/** Half of bore less drill, at most. */
function bushingPlay({ spec, plant }: Subject, use: Use, seat: Seat): number | undefined {
  const jig = use(spec.location.jig);
  const bushings = row(plant.jigs, jig, 'plant.jigs').bushings;
  if (!bushings || !Object.hasOwn(bushings, seat.id)) return undefined;
  const { diameter, fit, drill } = bushings[seat.id]!;
  const id = `plant.jigs.${jig}.bushings.${seat.id}.fit`;
  const bore = within(use, diameter, fit, use(seat.diameter), id);
  return Math.max(0, subtract(bore, use(drill)).high ?? 0) / 2;
}

function takenOf(subject: Subject, use: Use, setup: SetupId): Length | undefined {
  const pair = datumsOf(subject, use, setup);
  const plays = (['first', 'second'] as const).map((which) => use.fact(`location.${setup}.${which}-play`));
  const [first, second] = plays;
  if (!pair || !first || !second) return undefined;
  const half = (play: Length) => Math.max(0, play.low ?? play.value) / 2;
  const seat = pair[1];
  if (!isDiamond(use, seat)) return nm(half(first) + half(second));
  const fixture = use(setupOf(subject.spec, setup).fixture);
  const at = `plant.fixtures.${fixture}.pins.${seat.id}`;
  const land = seat.pin?.land ? use(seat.pin.land) : use<Length>(hole(`${at}.land`));
  const [bore, pin] = [holeOf(use, seat), pinOf(use, seat, at)];
  return nm(half(first) + absorbedByDiamond(land.value, bore.low ?? bore.value, pin.high ?? pin.value));
}
