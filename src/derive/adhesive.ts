/** The adhesive a line uses for edges or for the lamination. */
import type { Use } from '../facts/facts.ts';
import { row, wanted } from '../facts/row.ts';
import type { PlantSpec } from '../facts/spec.generated.ts';
import type { Subject } from '../facts/subject.ts';

export type Adhesive = NonNullable<PlantSpec['adhesives']>[string];
export type Purpose = 'adhesive' | 'edge-adhesive';

export const adhesiveOf = (subject: Subject, use: Use, purpose: Purpose): Adhesive =>
  row(subject.plant.adhesives, adhesiveName(subject, use, purpose), 'plant.adhesives');

/** A number its row must have for this model. */
export const adhesiveNumber = <K extends keyof Adhesive>(
  subject: Subject,
  use: Use,
  purpose: Purpose,
  key: K,
): NonNullable<Adhesive[K]> =>
  wanted(
    adhesiveOf(subject, use, purpose)[key],
    `plant.adhesives.${adhesiveName(subject, use, purpose)}.${key}`,
  ) as NonNullable<Adhesive[K]>;

function adhesiveName({ spec, plant }: Subject, use: Use, purpose: Purpose): string {
  const line = use(spec.line);
  return use(wanted(row(plant.lines, line, 'plant.lines')[purpose], `plant.lines.${line}.${purpose}`));
}
