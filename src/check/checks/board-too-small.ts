/** The boards delivered are wide and long enough for a piece. */
import type { Part } from '../../facts/parts.ts';
import { boardOf, partsOf } from '../../facts/parts.ts';
import { row } from '../../facts/row.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { say } from '../say.ts';
import { line, outlinePath, plan, rect, ring, shape } from '../sketch.ts';

const check: Check = {
  id: 'board-too-small',
  stage: 'derived',
  severity: 'error',
  why: 'Halves too narrow leave the body short of wood at its waist or its edge, and nobody sees it before the saw line is drawn.',
  mend: 'Buy wider or longer stock, or make the part of more pieces.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'least-width: 210,',
    fails: 'least-width: 150,',
  },
  sketch: plan(
    shape(rect(-27, -9, 27, 0), 'wood', 'edge'),
    shape(rect(-27, 0, 27, 9), 'wood', 'edge'),
    line(outlinePath(), 'saw'),
    ring(-9, -10.6, 3.4),
  ),
  run: (bench) =>
    partsOf(bench.subject.spec).flatMap((part) => [
      ...fault(bench, part, 'least-width'),
      ...fault(bench, part, 'least-length'),
    ]),
};
export default check;

function fault({ subject: { spec, plant }, facts }: Bench, part: Part, key: 'least-width' | 'least-length'): Fault[] {
  const wide = key === 'least-width';
  const seen = look(facts, (use) => {
    const leaf = row(plant.stock, use(boardOf(spec, part).stock), 'plant.stock')[key];
    return (
      leaf && { id: leaf.id, has: use(leaf), needs: use.fact(wide ? `blank.${part}.piece-width` : 'blank.length') }
    );
  });
  if (!seen || seen.has.value >= seen.needs.value) return [];
  const { id, has, needs } = seen;
  return [
    {
      at: `timber.${part}.stock`,
      what: `Each piece of the ${part} must be ${say(needs, needs.value)} ${wide ? 'wide before jointing' : 'long'}. Boards of this stock may be only ${say(has, has.value)} ${wide ? 'wide' : 'long'}.`,
      mend: wide
        ? `Name stock at least ${say(needs, needs.value)} wide, or make the ${part} of more pieces.`
        : `Name stock at least ${say(needs, needs.value)} long.`,
      against: [{ at: id, text: `the ${wide ? 'narrowest' : 'shortest'} board of this stock` }],
    },
  ];
}
