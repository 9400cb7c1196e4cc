/** Neck screws bite far enough into the heel, and their points stay under the fingerboard. */
import type { Check } from '../check.ts';
import { look } from '../check.ts';
import { drawnAndWorst, say } from '../say.ts';
import { neckSide, rect, ring, screw, section, shape, slab } from '../sketch.ts';

const check: Check = {
  id: 'neck-screw-bite',
  stage: 'derived',
  severity: 'error',
  why: 'Too short, and the strings pull the neck off its heel; too long, and a point comes up under a fret.',
  mend: 'Take a screw of another length, or leave more or less wood under the pocket.',
  example: {
    file: 'models/base/bolt-on.yaml',
    passes: 'screws: { row: neck-8, plate: 2.0 }',
    fails: 'screws: { row: neck-8-short, plate: 2.0 }',
  },
  sketch: section(
    slab({ right: 52, face: 'H 20 V 9 H 52' }),
    neckSide({ heel: 20.6, floor: 8.8, board: 16, top: -0.3 }),
    shape(rect(28, 17, 44, 18.4), 'metal', 'edge'),
    screw([36, 19], [36, 6.6]),
    ring(36, 7.6, 3.2),
  ),
  run: ({ subject: { spec, plant }, facts }) => {
    const { screws, heel, kind, board } = spec.neck;
    if (!screws) return [];
    const seen = look(facts, (use) => {
      const joint = use(kind);
      const row = joint === 'through' ? undefined : plant.necks?.[joint];
      return {
        bite: use.fact('neck.bite'),
        least: row?.bite && { id: row.bite.id, ...use(row.bite) },
        under: row?.['under-board'] && { id: row['under-board'].id, ...use(row['under-board']) },
        heel: heel && { id: heel.id, ...use(heel) },
        board: board && { id: board.id, ...use(board) },
      };
    });
    if (!seen) return [];
    const { bite, least, under } = seen;
    const [low, high] = [bite.low ?? bite.value, bite.high ?? bite.value];
    const stand = { at: screws.row.id, hangsOn: ['neck.bite'] };
    // What the plant leaves is counted from the plane of the fingerboard: the fingerboard itself is in it, and no screw.
    const thick = seen.board && { ...seen.board, value: seen.board.high ?? seen.board.value };
    const kept = thick && under ? (thick.value > under.value ? thick : under) : (under ?? thick);
    const over = seen.heel && kept ? (seen.heel.low ?? seen.heel.value) - kept.value : undefined;
    return [
      ...(least && low < least.value
        ? [
            {
              ...stand,
              what: `The neck screws bite ${drawnAndWorst(bite, (size) => `${size} into the heel`)}. They must bite at least ${say(least, least.value)}.`,
              mend: `Take a screw at least ${say(bite, least.value - low)} longer.`,
              against: [{ at: least.id, text: 'how far they are to bite' }],
            },
          ]
        : []),
      ...(over !== undefined && high > over
        ? [
            {
              ...stand,
              what: `The points of the neck screws may go ${say(bite, high)} into the heel. ${kept === under ? `With ${say(kept!, kept!.value)} to be left under the face of the fingerboard` : `Under a fingerboard ${say(kept!, kept!.value)} thick`} they may go no more than ${say(bite, over)}.`,
              mend: `Take a screw at least ${say(bite, high - over)} shorter.`,
              against: [
                { at: seen.heel!.id, text: 'how thick the heel is' },
                {
                  at: kept!.id,
                  text: kept === under ? 'what is to be left over the points' : 'how thick the fingerboard is',
                },
              ],
            },
          ]
        : []),
    ];
  },
};
export default check;
