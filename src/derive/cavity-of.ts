/** Which cavity a part lies in, and which seat of a cover lies over a cavity. */
import { cutId, cutsOf, isCavity, meantToMeet, pairsOf } from '../facts/cuts.ts';
import type { Cut } from '../facts/cuts.ts';
import { cavityOfPart } from '../facts/fitted.ts';
import type { Fitted } from '../facts/fitted.ts';
import type { Use } from '../facts/facts.ts';
import { row } from '../facts/row.ts';
import type { Plant } from '../facts/spec.generated.ts';
import type { Subject } from '../facts/subject.ts';
import { regionArea } from '../geometry/measure.ts';
import { intersection } from '../geometry/offset.ts';

export type HardwareRow = NonNullable<Plant.PlantSpec['hardware']>[string];

export const hardwareRow = ({ plant }: Subject, use: Use, { hardware }: Pick<Fitted, 'hardware'>): HardwareRow =>
  row(plant.hardware, use(hardware), 'plant.hardware');

/** The cavity a hole is meant to run into. */
export function cavityUnder({ spec }: Subject, use: Use, hole: string): Cut | undefined {
  const met = pairsOf(spec)
    .filter(({ a, b }) => isCavity(a) && b.kind === 'hole' && b.id === hole)
    .find(({ a, b }) => meantToMeet(use, a, b));
  return met?.a;
}

/** The cavity that a part goes into with its body; nothing of one that lies on a face or stands in a hole of its own. */
export function cavityOf({ spec }: Subject, use: Use, fitted: Fitted): Cut | undefined {
  const id = cavityOfPart(spec, use, fitted);
  return cutsOf(spec).find((cut) => cutId(cut) === id);
}

/** The hole or cavity whose edge a flange covers, and whose depth counts. */
export function cutOf(subject: Subject, use: Use, fitted: Fitted): Cut | undefined {
  if (fitted.kind === 'fitting') return cavityOf(subject, use, fitted);
  return cutsOf(subject.spec).find(({ kind, id }) => kind === fitted.kind && id === fitted.id);
}

/** The seat in the back that lies over most of a cavity: its cover’s inside is the seat’s floor. */
export function seatOver({ spec }: Subject, use: Use, cavity: Cut): Cut | undefined {
  const own = use.fact(`cavity.${cavity.id}.void`);
  if (own.kind !== 'pocket') return undefined;
  return cutsOf(spec)
    .filter((cut) => isCavity(cut) && cut.id !== cavity.id && use(spec.cavities![cut.id]!.purpose) === 'recess')
    .find((cut) => {
      const seat = use.fact(`cavity.${cut.id}.void`);
      if (seat.kind !== 'pocket' || seat.opens !== own.opens) return false;
      return regionArea(intersection(own.region, seat.region)) > regionArea(own.region) / 2;
    });
}
