/** Tacks as their checks look at them. */
import type { Use } from '../facts/facts.ts';
import { partsOf } from '../facts/parts.ts';
import { namesOf, row, wanted } from '../facts/row.ts';
import type { PlantSpec } from '../facts/spec.generated.ts';
import type { Bench, Fault } from './check.ts';
import { look } from './check.ts';

export type TackRow = NonNullable<PlantSpec['tacks']>[string];

/** A tack the model places, or the first of those the line spreads by rule: they are all of one kind. */
export interface Tack {
  readonly id: string;
  /** Where a finding about it stands. */
  readonly at: string;
  readonly own: boolean;
}

/** Every tack the model places; where it places none, one for all that the line spreads. */
export function tacksToLookAt({ subject: { spec, plant }, facts }: Bench): readonly Tack[] {
  if (!partsOf(spec).includes('cap')) return [];
  const own = namesOf(spec.tacks);
  if (own.length > 0) return own.map((id) => ({ id, at: spec.tacks![id]!.at.x.id, own: true }));
  const line = look(facts, (use) => row(plant.lines, use(spec.line), 'plant.lines').tacks);
  return line && facts.has('tack.1.spot') ? [{ id: '1', at: line.kind.id, own: false }] : [];
}

/** Its row in the plant. */
export const rowOf = ({ subject: { plant } }: Bench, use: Use, { id }: Tack): TackRow =>
  row(plant.tacks, use.fact(`tack.${id}.spot`).kind, 'plant.tacks');

/** Where its kind is named: by the model, or by the line. */
export function kindNamed({ subject }: Bench, use: Use, { id }: Tack): string {
  const { spec, plant } = subject;
  const line = row(plant.lines, use(spec.line), 'plant.lines').tacks;
  return (spec.tacks?.[id]?.kind ?? wanted(line, `tacks.${id}.kind`).kind).id;
}

export const nameOf = ({ id, own }: Tack): string => (own ? `Tack ${id}` : 'The tack of the line');

/** Notes of a finding about a tack: the line that names it, and a number of its row. */
export const against = (named: string, leaf: string, text: string): Fault['against'] => [
  { at: named, text: 'which kind of tack it is' },
  { at: leaf, text },
];
