/** A part is cut from stock of its own species. */
import { boardOf, partsOf } from '../../facts/parts.ts';
import { row } from '../../facts/row.ts';
import type { Check } from '../check.ts';
import { look } from '../check.ts';

const check: Check = {
  id: 'stock-of-another-species',
  stage: 'spec',
  severity: 'error',
  why: 'The store would hand out one wood and the card would speak of another.',
  mend: 'Name stock of the species, or the species of the stock.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'back: { species: red-alder,',
    fails: 'back: { species: bigleaf-maple,',
  },
  run: ({ subject: { spec, plant }, facts }) =>
    partsOf(spec).flatMap((part) => {
      const seen = look(facts, (use) => {
        const board = boardOf(spec, part);
        const stock = use(board.stock);
        const of = row(plant.stock, stock, 'plant.stock').species;
        return { species: use(board.species), stock, of: use(of), id: of.id, at: board.species.id };
      });
      if (!seen || seen.species === seen.of) return [];
      return [
        {
          at: seen.at,
          what: `The ${part} is to be ${seen.species}, but its stock ${seen.stock} is ${seen.of}.`,
          mend: 'Name stock of the species, or the species of the stock.',
          against: [{ at: seen.id, text: 'species of the stock' }],
        },
      ];
    }),
};
export default check;
