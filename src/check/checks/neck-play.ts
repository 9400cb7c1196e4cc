/** The neck goes into its pocket and does not rattle there. */
import type { Check } from '../check.ts';
import { look } from '../check.ts';
import { say } from '../say.ts';
import { gap, line, neckEnd, neckPlan, plan, shape } from '../sketch.ts';

const check: Check = {
  id: 'neck-play',
  stage: 'derived',
  severity: 'error',
  why: 'Too tight, and the lacquer cracks at the corners or the neck does not go in; too loose, and it stands beside the centreline, or the glue has a gap to fill.',
  mend: 'Give pocket or heel another width, or closer limits.',
  example: {
    file: 'models/base/bolt-on.yaml',
    passes: 'width: 55.8 ±0.05',
    fails: 'width: 56.1 ±0.05',
  },
  sketch: plan(
    neckEnd(16),
    shape('M 16.6 -8 H -16 V 8 H 16.6 Z', 'air'),
    line('M 15.4 -8 H -16 V 8 H 15.4'),
    neckPlan(-15.4, 2.6, 5),
    gap(0, -8, -2.4),
  ),
  run: ({ subject: { spec, plant }, facts }) => {
    const { width, pocket, kind } = spec.neck;
    if (!width || !pocket) return [];
    const seen = look(facts, (use) => {
      const joint = use(kind);
      const band = joint === 'through' ? undefined : plant.necks?.[joint]?.play;
      const shape = spec.cavities?.[use(pocket)]?.shape.width;
      return { play: use.fact('neck.play'), band: band && { id: band.id, ...use(band) }, joint, shape };
    });
    if (!seen?.band) return [];
    const { play, band, joint, shape } = seen;
    const [low, high] = [play.low ?? play.value, play.high ?? play.value];
    if (low >= band.low! && high <= band.high!) return [];
    return [
      {
        at: width.id,
        what: `${low < 0 ? `The neck may be ${say(play, -low)} too wide for its pocket, or have` : `Between neck and pocket are ${say(play, low)} to`} ${say(play, high)} of play, both sides together. A neck of this kind (${joint}) is to have ${say(band, band.low!)} to ${say(band, band.high!)}.`,
        mend: `Give pocket or heel another width, or closer limits: ${say(play, Math.round((band.low! + band.high!) / 2))} is the middle.`,
        against: [
          ...(shape ? [{ at: shape.id, text: 'width of the pocket' }] : []),
          { at: band.id, text: 'how a neck is to sit' },
        ],
        hangsOn: ['neck.play'],
      },
    ];
  },
};
export default check;
