/** The neck points at the bridge: the middle line of its pocket, drawn on, meets the bridge's middle. */
import { row } from '../../facts/row.ts';
import type { Check } from '../check.ts';
import { look } from '../check.ts';
import { say, sayAs, sayPoint } from '../say.ts';
import { centreline, gap, line, neckPlan, outline, plan, rect, shape } from '../sketch.ts';

const check: Check = {
  id: 'neck-beside-bridge',
  stage: 'derived',
  severity: 'error',
  why: 'The strings lie askew over the fingerboard: the outer one runs off its edge, and no saddle can mend it.',
  mend: 'Place pocket and bridge on one line, and turn the pocket so that it points at the bridge.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'neck-pocket: { at: { x: 0, y: 190 }',
    fails: 'neck-pocket: { at: { x: 1.5, y: 190 }',
  },
  sketch: plan(
    outline(),
    centreline(),
    neckPlan(10, 4),
    shape(rect(-13, -5, -9, 5), 'metal', 'edge'),
    line('M -11 -3.6 L 29 0.4 M -11 3.6 L 29 7.6', 'thin'),
    gap(20, 0, 4, 'end'),
  ),
  run: ({ subject: { spec, plant, hand }, facts }) => {
    const seen = look(facts, (use) => {
      const within = row(plant.lines, use(spec.line), 'plant.lines')['place-within']?.['neck-to-bridge'];
      const pocket = spec.neck.pocket && use(spec.neck.pocket);
      if (!within || pocket === undefined || !spec.bridge.mounts) return undefined;
      const { angle, at } = row(spec.cavities, pocket, 'cavities');
      return {
        pocket,
        at: at.x.id,
        x: use(at.x),
        y: use(at.y),
        turned: angle && { at: angle.id, q: use(angle) },
        limit: { id: within.id, ...use(within) },
        off: use.fact('neck.beside-bridge'),
        middle: use.fact('bridge.middle'),
        hole: spec.bridge.mounts.holes[0]!.id,
      };
    });
    if (!seen) return [];
    const { pocket, off, limit, middle, turned } = seen;
    const drawn = Math.abs(off.value);
    const apart = ((off.high ?? off.value) - (off.low ?? off.value)) / 2;
    // What machine and pins leave open by themselves is another check's.
    if (drawn === 0 || drawn + apart <= limit.value || apart > limit.value) return [];
    const side = off.value > 0 ? 'treble' : 'bass';
    const other = off.value > 0 ? 'bass' : 'treble';
    const at = { x: (seen.x.value / 1e6) * (hand === 'left' ? -1 : 1), y: seen.y.value / 1e6 };
    const isTurned = turned && turned.q.value % 90 !== 0;
    return [
      {
        at: isTurned ? turned.at : seen.at,
        what: `The middle line of ${pocket} begins at ${sayPoint(at, hand)}${isTurned ? `, turned ${sayAs(turned.q, turned.q.value)}` : ''}. Drawn on to the bridge it passes ${say(off, drawn)} to the ${side} side of the bridge’s middle, at ${sayPoint(middle.part ?? middle.holes, hand)}. The machine may put the two another ${say(off, apart)} apart: ${say(off, drawn + apart)} in all, and ${say(limit, limit.value)} at most is allowed.`,
        mend: isTurned
          ? `Take out its \`angle\`, or place it so that the line comes ${say(off, drawn)} nearer to the ${other} side at the bridge; ${say(off, limit.value - apart)} beside it would pass.`
          : `Move the pocket ${say(off, drawn)} to the ${other} side, or the bridge to it; ${say(off, limit.value - apart)} beside it would pass.`,
        against: [
          { at: seen.hole, text: 'a hole of the bridge' },
          { at: limit.id, text: 'how far apart they may be' },
          ...(isTurned ? [{ at: seen.at, text: 'where the pocket lies' }] : []),
        ],
        hangsOn: ['neck.beside-bridge', `cavity.${pocket}.drawn`],
      },
    ];
  },
};
export default check;
