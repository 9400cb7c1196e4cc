/** The fingerboard ends before the pickup begins. */
import { namesOf } from '../../facts/row.ts';
import { bounds } from '../../geometry/measure.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { say } from '../say.ts';
import { cut, cuts, neckSide, ring, section, slab } from '../sketch.ts';

const check: Check = {
  id: 'fingerboard-over-pickup',
  stage: 'derived',
  severity: 'error',
  why: 'The end of the fingerboard hangs over the pocket of the pickup, and the pickup does not go in.',
  mend: 'Move the pickup towards the bridge, or take frets or fingerboard away.',
  example: {
    file: 'models/base/bolt-on.yaml',
    passes: 'end: 8',
    fails: 'end: 20',
  },
  sketch: section(
    slab({ right: 54, face: 'H 36 V 9 H 54' }),
    cuts(cut({ from: 14, to: 26, depth: 10 })),
    neckSide({ heel: 36.8, floor: 8.8, board: 21, top: -0.3 }),
    ring(23.4, -1, 3.2, 'upper-left'),
  ),
  run: (bench) => namesOf(bench.subject.spec.cavities).flatMap((id) => fault(bench, id)),
};
export default check;

function fault({ subject: { spec }, facts }: Bench, id: string): Fault[] {
  const { end } = spec.neck;
  if (!end) return [];
  const cavity = spec.cavities![id]!;
  const seen = look(facts, (use) => {
    const drawn = use.fact(`cavity.${id}.drawn`);
    const isPickup = use(cavity.purpose) === 'pickup' && use(cavity.setup) === 'top';
    return isPickup && drawn.ok ? { board: use.fact('neck.board-end'), box: bounds(drawn.polygon)! } : undefined;
  });
  // A pickup that lies beside the fingerboard is none that it could hang over.
  if (!seen || seen.box.minX > 0 || seen.box.maxX < 0) return [];
  const edge = Math.round(seen.box.maxY * 1e6);
  if (edge <= seen.board.value) return [];
  return [
    {
      at: cavity.at.y.id,
      what: `The pocket of ${id} reaches up to ${say(seen.board, edge)} from the bridge line, and the fingerboard ends at ${say(seen.board, seen.board.value)}.`,
      mend: `Move it ${say(seen.board, edge - seen.board.value)} towards the bridge, or end the fingerboard earlier.`,
      against: [
        { at: spec.neck.frets.id, text: 'how many frets it has' },
        { at: end.id, text: 'how far it runs on past the last fret' },
      ],
      hangsOn: ['neck.board-end', `cavity.${id}.drawn`],
    },
  ];
}
