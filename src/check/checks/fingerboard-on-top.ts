/** The fingerboard lies clear of the top, from the joint to its end. */
import type { Check } from '../check.ts';
import { look } from '../check.ts';
import { drawnAndWorst, say } from '../say.ts';
import { gap, neckSide, ring, section, slab } from '../sketch.ts';

const check: Check = {
  id: 'fingerboard-on-top',
  stage: 'derived',
  severity: 'error',
  why: 'The fingerboard comes to lie on the top before the heel lies in its pocket: the joint stays open, and the screws bend the neck.',
  mend: 'Make the pocket less deep, the heel thicker or the top lower there.',
  example: {
    file: 'models/base/bolt-on.yaml',
    passes: 'board: 6.0',
    fails: 'board: 12.0',
  },
  sketch: section(
    slab({ right: 52, face: 'H 24 V 10 H 52' }),
    neckSide({ heel: 24.8, floor: 7, board: 14, top: -0.2 }),
    gap(36, 7, 10, 'end'),
    ring(18, -0.5, 2.6, 'upper-left'),
  ),
  run: ({ subject: { spec }, facts }) => {
    const { board, pocket } = spec.neck;
    if (!board || !pocket) return [];
    const seen = look(facts, (use) => ({ room: use.fact('neck.board-clearance'), cavity: use(pocket) }));
    if (!seen) return [];
    const { room, cavity } = seen;
    const least = room.low ?? room.value;
    if (least >= 0) return [];
    const place = spec.cavities?.[cavity];
    const depth = place?.floor ?? place?.depth;
    return [
      {
        at: board.id,
        what: `The fingerboard comes to lie ${drawnAndWorst(room, (size, past) => (past ? `${size} too low, down in the top` : `${size} above the top`))}.`,
        mend: `Bring the fingerboard ${say(room, -least)} higher: a pocket less deep, or a thicker heel.`,
        against: depth ? [{ at: depth.id, text: 'how deep the neck goes into the body' }] : [],
        hangsOn: ['neck.board-clearance'],
      },
    ];
  },
};
export default check;
