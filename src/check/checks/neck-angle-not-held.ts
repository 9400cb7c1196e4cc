/** The floor of the pocket holds the angle the neck is to have. */
import type { Check } from '../check.ts';
import { look } from '../check.ts';
import { sayAs, say } from '../say.ts';
import { gap, ideal, neckSide, section, slab } from '../sketch.ts';

const check: Check = {
  id: 'neck-angle-not-held',
  stage: 'derived',
  severity: 'error',
  why: 'The neck leans too far or not enough, and the strings come out too high or too low at the bridge.',
  mend: 'Let the floor fall more or less, or give its fall closer limits.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'angle: 0 deg ±0.2',
    fails: 'angle: 0.5 deg ±0.2',
  },
  sketch: section(
    slab({ right: 50, face: 'H 26 V 9 L 50 7.4' }),
    neckSide({ heel: 26.6, floor: 8.8, board: 22, top: 0, lean: 3.4 }),
    ideal('M 22 -1.8 L 59 -1.8 '),
    gap(56, -5, -1.8, 'end'),
  ),
  run: ({ subject: { spec }, facts }) => {
    const { angle } = spec.neck;
    const { pocket } = spec.neck;
    if (!angle || !pocket) return [];
    const seen = look(facts, (use) => ({
      wanted: use(angle),
      held: use.fact('neck.leans'),
      fall: use.fact('neck.fall'),
      cavity: use(pocket),
    }));
    if (!seen) return [];
    const { wanted, held, fall, cavity } = seen;
    const [low, high] = [held.low ?? held.value, held.high ?? held.value];
    // A hundredth of a degree is a hundredth of a millimetre in the length of a pocket: nobody can hold less.
    if (low >= wanted.low! - 0.005 && high <= wanted.high! + 0.005) return [];
    const degrees = (value: number) => sayAs(held, value, 2);
    const falls = spec.cavities?.[cavity]?.falls;
    return [
      {
        at: angle.id,
        what: `The floor of the pocket may lean from ${degrees(low)} to ${degrees(high)}${low < 0 ? ' (below zero: the other way)' : ''}, for it falls ${say(fall, fall.low ?? fall.value)} to ${say(fall, fall.high ?? fall.value)} between the two points. The neck is to lean from ${degrees(wanted.low!)} to ${degrees(wanted.high!)}.`,
        mend: falls
          ? 'Let the floor fall more or less, or give its fall closer limits.'
          : `Say what the floor of ${cavity} falls, with limits: without them it may lean as far as its depth lets it.`,
        against: falls ? [{ at: falls.id, text: 'how much the floor falls' }] : [],
        hangsOn: ['neck.fall'],
      },
    ];
  },
};
export default check;
