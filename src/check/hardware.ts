/** Parts of the hardware table where they are fitted: what their checks have in common. */
import { cavityOfPart, fittedId, fittedOf } from '../facts/fitted.ts';
import type { Fitted, FittedId } from '../facts/fitted.ts';
import type { DerivedFacts } from '../facts/facts.ts';
import type { Leaf } from '../facts/leaf.ts';
import { row } from '../facts/row.ts';
import type { Plant } from '../facts/spec.generated.ts';
import type { Length } from '../units/quantity.ts';
import type { Bench } from './check.ts';
import { look } from './check.ts';

export type HardwareRow = NonNullable<Plant.PlantSpec['hardware']>[string];

export interface Part {
  readonly fitted: Fitted;
  readonly id: FittedId;
  /** Its name in the table, as the spec gives it. */
  readonly name: string;
  readonly row: HardwareRow;
}

/** Every part whose row can be read, in the order of the spec. */
export function fittedParts({ subject: { spec, plant }, facts }: Bench): readonly Part[] {
  return fittedOf(spec).flatMap((fitted) => {
    const seen = look(facts, (use) => {
      const name = use(fitted.hardware);
      return { name, row: row(plant.hardware, name, 'plant.hardware') };
    });
    return seen ? [{ fitted, id: fittedId(fitted), ...seen }] : [];
  });
}

/** A fact about a part beside the number of its row it is held against; undefined where either is missing. */
export function against<I extends keyof DerivedFacts>(
  { facts }: Bench,
  fact: I,
  leaf: Leaf<Length> | undefined,
): { readonly found: NonNullable<DerivedFacts[I]>; readonly asked: Length; readonly at: string } | undefined {
  if (!leaf) return undefined;
  const seen = look(facts, (use) => ({ found: use.fact(fact), asked: use(leaf) }));
  const { found } = seen ?? {};
  return seen && found ? { found, asked: seen.asked, at: leaf.id } : undefined;
}

export const lowOf = (q: Length): number => q.low ?? q.value;
export const highOf = (q: Length): number => q.high ?? q.value;

/** The numbers that say how large a part is, for the notes of a finding. `name`: of the part, or of what of it is meant. */
export const sizesOf = (outline: HardwareRow['body'], name: string) =>
  (['diameter', 'length', 'width'] as const).flatMap((of) => {
    const leaf = outline?.[of];
    return leaf ? [{ at: leaf.id, text: `the ${of} of ${name}` }] : [];
  });

/** The number that says how deep its hole or cavity goes; where it lies, of a part that has neither. */
export function depthAt({ subject: { spec }, facts }: Bench, { fitted }: Part): string {
  const { kind } = fitted;
  const cavity = kind === 'fitting' ? look(facts, (use) => cavityOfPart(spec, use, fitted)) : undefined;
  const own = kind === 'fitting' ? cavity?.slice('cavity.'.length) : fitted.id;
  const cut = kind === 'hole' ? spec.holes?.[fitted.id] : own === undefined ? undefined : spec.cavities?.[own];
  const floor = cut && 'floor' in cut ? cut.floor : undefined;
  return (cut?.depth ?? floor)?.id ?? fitted.place.id;
}
