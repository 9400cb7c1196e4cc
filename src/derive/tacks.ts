/** Tacks of the lamination: which a model has, of what kind, and what the saws beside them do. */
import type { Use } from '../facts/facts.ts';
import { partsOf } from '../facts/parts.ts';
import { namesOf, present, row, wanted } from '../facts/row.ts';
import type { PlantSpec } from '../facts/spec.generated.ts';
import type { Subject } from '../facts/subject.ts';

export type TackRow = NonNullable<PlantSpec['tacks']>[string];
export type LineTacks = NonNullable<NonNullable<PlantSpec['lines']>[string]['tacks']>;

/** Whether there is a joint that could be tacked. */
export const hasJoint = ({ spec }: Subject): boolean => partsOf(spec).includes('cap');

/** The model's own tacks by name; none where the line's are spread by rule. */
export const ownTacks = ({ spec }: Subject): readonly string[] => namesOf(spec.tacks);

/**
 * Names of all tacks: the model's own, else the line's by number. Like the names of a table it says only which facts there
 * are; what each of them says is read where it is derived.
 */
export function tackIds(subject: Subject): readonly string[] {
  if (!hasJoint(subject)) return [];
  const own = ownTacks(subject);
  if (own.length > 0) return own;
  const line = present(subject.spec.line)?.text ?? '';
  const count = present(present(present(subject.plant.lines)?.[line])?.tacks)?.count;
  const many = Number.parseInt(present(count)?.text ?? '0', 10) || 0;
  return Array.from({ length: Math.max(0, many) }, (_, i) => String(i + 1));
}

/** How the line tacks; undefined where only go-pins hold cap and back. */
export function lineTacks({ spec, plant }: Subject, use: Use): LineTacks | undefined {
  return row(plant.lines, use(spec.line), 'plant.lines').tacks;
}

/** Name of the kind of a tack: its own, else the line's. */
export function kindName(subject: Subject, use: Use, id: string): string {
  const own = subject.spec.tacks?.[id]?.kind;
  return use(own ?? wanted(lineTacks(subject, use), `tacks.${id}.kind`).kind);
}

export const kindOf = (subject: Subject, use: Use, id: string): TackRow =>
  row(subject.plant.tacks, kindName(subject, use, id), 'plant.tacks');
