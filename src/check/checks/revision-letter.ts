/** The revision is one the plant writes. */
import { present } from '../../facts/row.ts';
import type { Check } from '../check.ts';
import { look } from '../check.ts';
import { REVISION_LETTERS, revisionNumber } from '../../facts/revision.ts';

const check: Check = {
  id: 'revision-letter',
  stage: 'spec',
  severity: 'error',
  why: 'Letters that are taken for numbers, or for one another, are left out so that two revisions are never mixed up on a post.',
  mend: 'Use the next letter of the plant’s row.',
  example: { file: 'models/tarn.yaml', passes: 'revision: C', fails: 'revision: O' },
  run: ({ subject: { spec, plant }, facts }) => {
    const seen = look(facts, (use) => {
      const own = present(plant.plant)?.['revision-letters'];
      return { revision: use(spec.revision), letters: own ? use(own) : REVISION_LETTERS };
    });
    if (!seen || revisionNumber(seen.revision, seen.letters) !== undefined) return [];
    return [
      {
        at: 'revision',
        what: `"${seen.revision}" is not a revision here.`,
        mend: `Use the letters ${seen.letters}.`,
        against: [],
      },
    ];
  },
};
export default check;
