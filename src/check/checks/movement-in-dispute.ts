/** The published tables say the same of how a wood moves, or the plant has its own figure. */
import { boardOf, partsOf } from '../../facts/parts.ts';
import { movements } from '../../reference/movement.ts';
import type { Check } from '../check.ts';
import { look } from '../check.ts';
import { sayShare } from '../say.ts';

const check: Check = {
  id: 'movement-in-dispute',
  stage: 'derived',
  severity: 'caution',
  why: 'Two published tables contradict each other for this wood. The larger movement is used; nobody has verified it.',
  mend: 'Measure it, or take a figure the plant trusts, and give it with reason, name and date; or permit it.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'species: red-alder, pieces: 2, sawn: flat, stock: alder-6-4',
    fails: 'species: limba, pieces: 2, sawn: flat, stock: limba-6-4',
  },
  run: ({ subject: { spec }, facts }) =>
    partsOf(spec).flatMap((part) => {
      const seen = look(facts, (use) => ({
        species: use(boardOf(spec, part).species),
        agree: use.fact(`movement.${part}.sources-agree`),
        rate: use.fact(`movement.${part}.across.rate`),
      }));
      if (!seen || seen.agree) return [];
      const { tangential } = movements[seen.species]!;
      return [
        {
          at: `timber.${part}.species`,
          what: `Published tables disagree on how much ${seen.species} moves. Along the rings one gives ${sayShare(tangential.coefficient, 3)} for each 1 % of moisture; the shrinkage of ${sayShare(tangential.shrinkage / 100)} in the other comes to another figure. The larger of the two is used: ${sayShare(seen.rate.value, 3)} across the grain.`,
          mend: `Give the plant's own movement of ${seen.species} with reason, name and date, or permit this with a reason.`,
          against: [],
        },
      ];
    }),
};
export default check;
