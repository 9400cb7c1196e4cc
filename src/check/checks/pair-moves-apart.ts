/** Cap and back, as far apart in moisture as the store lets a pair go, do not pull harder at each other than the line bears. */
import { row, wanted } from '../../facts/row.ts';
import { machineNumber } from '../../facts/station-machine.ts';
import type { Check } from '../check.ts';
import { look } from '../check.ts';
import { say, sayShare } from '../say.ts';
import { gap, section, shape, slab } from '../sketch.ts';

const check: Check = {
  id: 'pair-moves-apart',
  stage: 'derived',
  severity: 'error',
  why: 'What is glued while one part is damper than the other bows when both come to rest, and the joint opens at the edge.',
  mend: 'Let the moistures of a pair differ less, saw both parts the same way, or choose woods that move alike.',
  example: { file: 'models/plant/plant.yaml', passes: 'pair-agree: 0.5 %', fails: 'pair-agree: 1.2 %' },
  sketch: section(
    slab({ top: 9 }),
    shape('M 2 0 Q 30 9 58 0 V 4.4 Q 30 13.4 2 4.4 Z', 'cap', 'edge'),
    gap(54, 5.2, 9, 'end'),
  ),
  run: ({ subject: { spec, plant }, facts }) => {
    const seen = look(facts, (use) => {
      const line = use(spec.line);
      const most = wanted(
        row(plant.lines, line, 'plant.lines')['joint-movement'],
        `plant.lines.${line}.joint-movement`,
      );
      const pair = machineNumber(plant, use, 'conditioning', 'pair-agree');
      return {
        pairId: pair.id,
        pair: use(pair),
        mostId: most.id,
        most: use(most),
        moves: use.fact('joint.movement'),
        allowed: use.fact('joint.content-difference'),
        width: use.fact('joint.width'),
      };
    });
    if (!seen || seen.moves.value <= seen.most.value) return [];
    const { pair, pairId, most, mostId, moves, allowed, width } = seen;
    // Rounded down: the number named passes.
    const passes = Math.floor(allowed.value * 1000) / 1000;
    return [
      {
        at: pairId,
        what: `With ${sayShare(pair.value)} of moisture between them, cap and back want to move ${say(moves, moves.value)} against each other over a width of ${say(width, width.value)}. No more than ${say(most, most.value)} is allowed.`,
        mend:
          passes > 0
            ? `Let the moistures of the two differ by ${sayShare(passes)} at most.`
            : 'The woods alone move too far apart: saw both the same way, choose woods that move alike, or narrow the band of release.',
        against: [
          { at: mostId, text: 'how far they may move against each other' },
          { at: 'movement.back.across.per-percent', text: 'how the back moves' },
        ],
      },
    ];
  },
};
export default check;
