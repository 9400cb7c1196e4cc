/** The neck goes into its pocket and does not rattle there. */
import type { Length } from '../../units/quantity.ts';
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
        what: `${sayPlay(play, low, high)} A neck of this kind (${joint}) is to have ${say(band, band.low!)} to ${say(band, band.high!)}.`,
        mend: mendOf(play, band),
        against: [
          ...(shape ? [{ at: shape.id, text: 'width of the pocket' }] : []),
          { at: band.id, text: 'the play a neck is to have' },
        ],
        hangsOn: ['neck.play'],
      },
    ];
  },
};
export default check;

/** Play, or how much too wide the neck is: a size below nothing is said as what it is. */
function sayPlay(play: Length, low: number, high: number): string {
  if (high < 0) return `The neck is ${say(play, -high)} to ${say(play, -low)} too wide for its pocket.`;
  return low < 0
    ? `The neck may be up to ${say(play, -low)} too wide for its pocket, or have up to ${say(play, high)} of play, both sides together.`
    : `Between neck and pocket there are ${say(play, low)} to ${say(play, high)} of play, both sides together.`;
}

/** What brings the play to the middle of its band; closer limits, where it varies by more than that is wide. */
function mendOf(play: Length, band: Length): string {
  const middle = Math.round((band.low! + band.high!) / 2);
  const by = middle - play.value;
  const tooFar = (play.high ?? play.value) - (play.low ?? play.value) > band.high! - band.low!;
  const closer = tooFar ? ' Give them closer limits as well.' : '';
  if (by === 0) return 'Give pocket and heel closer limits.';
  const [pocket, heel] = by > 0 ? ['wider', 'narrower'] : ['narrower', 'wider'];
  return `Make the pocket ${say(play, Math.abs(by))} ${pocket} or the heel that much ${heel}: that leaves ${say(play, middle)}, the middle.${closer}`;
}
