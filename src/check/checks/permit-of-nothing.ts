/** A permit is for a caution, and still runs. */
import { namesOf } from '../../facts/row.ts';
import { offer } from '../../findings/nearest.ts';
import type { Check, Fault } from '../check.ts';
import { look } from '../check.ts';

const check: Check = {
  id: 'permit-of-nothing',
  stage: 'spec',
  severity: 'error',
  why: 'A permit that covers nothing looks on a post like something that was settled.',
  mend: 'Name a caution, with a day still to come, or take the permit out. Errors cannot be permitted.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'notes: { sizing: Sand the glue faces last. }',
    fails:
      'notes: { sizing: Sand the glue faces last. }\npermits: { removal-too-small: { reason: trial, name: R. Holm, until: 2099-01-01 } }',
  },
  run: ({ subject: { spec }, facts, on, cautions }) =>
    namesOf(spec.permits).flatMap((id): Fault[] => {
      const permit = spec.permits![id]!;
      const seen = look(facts, (use) => ({ until: use(permit.until), reason: use(permit.reason) }));
      if (!seen) return [];
      if (!cautions.includes(id)) {
        return [
          {
            at: permit.reason.id,
            what: `There is no caution "${id}", and only cautions can be permitted.`,
            mend: offer(id, cautions),
            against: [],
          },
        ];
      }
      if (seen.until >= on) return [];
      return [
        {
          at: permit.until.id,
          what: `This permit ended on ${seen.until}.`,
          mend: 'Mend what it was for, or give it a new day and say why.',
          against: [],
        },
      ];
    }),
};
export default check;
