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
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';
import type { Datum } from '../seats.ts';
import { drawnHole, holeOf, isDiamond, pinOf, seatOf, within } from '../seats.ts';
import { placeError } from '../surfaces.ts';

declare module '../../facts/facts.ts' {
  interface DerivedFacts
    extends
      /** Nothing where neither jig nor machine say how far a hole may lie off. */
      Record<`location.${SetupId}.spacing-error`, Length | undefined>,
      /** Nothing where the fixture does not say what pins it has. */
      Record<`location.${SetupId}.spacing-taken`, Length | undefined>,
      /** Nothing of a hole that no bushing guides. */
      Record<`location.${SetupId}.${'first' | 'second'}-drill-play`, Length | undefined> {}
}

const rule: Rule = (subject) =>
  setupOrder
    .filter((setup) => subject.spec.setups[setup] !== undefined)
    .flatMap((setup) => [
      ...(['first', 'second'] as const).map((which, i) =>
        derivation({
          id: `location.${setup}.${which}-drill-play`,
          label: `set-up ${setup}: play of the drill in the bushing of its ${which} hole`,
          formula: 'bore of the bushing less drill',
          source: practice('largest less smallest; no source'),
          value: (use) => {
            const datum = use.fact(`location.${setup}.datums`)?.[i];
            return datum && !datum.drilled ? drillPlay(subject, use, setup, datum) : undefined;
          },
        }),
      ),
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
  const pair = use.fact(`location.${setup}.datums`);
  if (!pair) return undefined;
  const each = pair.map((datum) =>
    datum.drilled
      ? worstCase(placeError(subject, use, datum.drilled, `hole.${datum.id}`)).plus
      : bushingPlay(subject, use, setup, datum),
  );
  return each[0] === undefined || each[1] === undefined ? undefined : nm(each[0] + each[1]);
}

/** Half of bore less drill, at most. */
function bushingPlay(subject: Subject, use: Use, setup: SetupId, datum: Datum): number | undefined {
  const play = drillPlay(subject, use, setup, datum);
  return play && Math.max(0, play.high ?? 0) / 2;
}

function drillPlay(subject: Subject, use: Use, setup: SetupId, { id }: Datum): Length | undefined {
  const { spec, plant } = subject;
  const jig = use(spec.location.jig);
  const bushings = row(plant.jigs, jig, 'plant.jigs').bushings;
  if (!bushings || !Object.hasOwn(bushings, id)) return undefined;
  const { diameter, fit, drill } = bushings[id]!;
  // A bushing is as wide as the hole is to be, within limits of its own.
  const drawn = use(drawnHole(subject, use, setup, id).diameter);
  const bore = within(use, diameter, fit, drawn, `plant.jigs.${jig}.bushings.${id}.fit`);
  return subtract(bore, use(drill));
}

function takenOf(subject: Subject, use: Use, setup: SetupId): Length | undefined {
  const second = use.fact(`location.${setup}.datums`)?.[1];
  const play = use.fact(`location.${setup}.first-play`);
  if (!second || !play) return undefined;
  const half = (q: Length) => Math.max(0, q.low ?? q.value) / 2;
  const seat = seatOf(subject, use, setup, second.id);
  if (!isDiamond(use, seat)) {
    const other = use.fact(`location.${setup}.second-play`);
    return other && nm(half(play) + half(other));
  }
  const land = seat.pin?.land ? use(seat.pin.land) : use<Length>(hole(`${seat.pinRow}.land`));
  const [bore, pin] = [holeOf(use, seat), pinOf(use, seat)];
  return nm(half(play) + absorbedByDiamond(land.value, bore.low ?? bore.value, pin.high ?? pin.value));
}
