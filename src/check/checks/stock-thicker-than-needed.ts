/** The board is no thicker than the thinnest standard size that carries the part. */
import { boardOf, partsOf } from '../../facts/parts.ts';
import { row } from '../../facts/row.ts';
import { formatQuantity } from '../../units/format.ts';
import type { Check } from '../check.ts';
import { look } from '../check.ts';
import { say } from '../say.ts';
import { gap, line, rect, section, shape, slab } from '../sketch.ts';

const check: Check = {
  id: 'stock-thicker-than-needed',
  stage: 'derived',
  severity: 'caution',
  why: 'A size thicker than needed is bought by the board foot and leaves the planer as chips.',
  mend: 'Name the thinner size, or permit this one with a reason.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'species: red-alder, rough: 1-1/2 in, least-thickness: 1-1/2 in',
    fails: 'species: red-alder, rough: 2 in, least-thickness: 2 in',
  },
  sketch: section(slab({ top: -7 }), shape(rect(2, -7, 58, 4), 'removed'), line('M 2 4 H 58'), gap(30, -7, 4)),
  run: ({ subject: { spec, plant }, facts }) =>
    partsOf(spec).flatMap((part) => {
      const seen = look(facts, (use) => {
        const stock = row(plant.stock, use(boardOf(spec, part).stock), 'plant.stock');
        return {
          id: stock.rough.id,
          rough: use(stock.rough),
          board: use.fact(`stock.${part}.board`),
          thinnest: use.fact(`stock.${part}.rough`),
        };
      });
      if (!seen || seen.rough.value <= seen.thinnest.value) return [];
      const { id, rough, board, thinnest } = seen;
      return [
        {
          at: `timber.${part}.stock`,
          what: `The ${part} needs a board of ${say(board, board.value)}; stock of ${formatQuantity(thinnest)} is enough for that, and this is ${formatQuantity(rough)}.`,
          mend: `Name stock of ${formatQuantity(thinnest)} rough, or permit this with a reason.`,
          against: [{ at: id, text: 'nominal size of the stock' }],
        },
      ];
    }),
};
export default check;
