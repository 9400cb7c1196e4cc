/** Both outer saddles can be set to where the strings ring true, wherever machine and pins put the bridge. */
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { offBy, say } from '../say.ts';
import { across, ideal, rect, section, shape, slab } from '../sketch.ts';

const check: Check = {
  id: 'saddle-out-of-travel',
  stage: 'derived',
  severity: 'error',
  why: 'The saddle stands at the end of its screw and the string is still out of tune: the holes of the bridge are drilled.',
  mend: 'Move the holes of the bridge, or turn the line through them for the bass side.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'travel: 8',
    fails: 'travel: 3',
  },
  sketch: section(
    slab({ top: 4 }),
    shape('M 10 4 V -2 H 13 V 2 H 40 V -2 H 43 V 4 Z', 'metal', 'edge'),
    shape(rect(34, -4, 39.4, 1.8), 'metal', 'edge'),
    ideal(rect(45, -4, 50.4, 1.8)),
    across(-6, 36.7, 47.7),
  ),
  run: (bench) => (['bass', 'treble'] as const).flatMap((side) => fault(bench, side)),
};
export default check;

function fault({ subject: { spec }, facts }: Bench, side: 'bass' | 'treble'): Fault[] {
  const { mounts, travel } = spec.bridge;
  if (!mounts) return [];
  const seen = look(facts, (use) => ({ off: use.fact(`saddle.${side}.from-middle`), travel: use(travel) }));
  if (!seen) return [];
  const { off } = seen;
  const half = seen.travel.value / 2;
  const [low, high] = [off.low ?? off.value, off.high ?? off.value];
  if (high <= half && low >= -half) return [];
  const tail = high > half;
  const short = tail ? high - half : -half - low;
  return [
    {
      at: mounts.saddles.id,
      what: `The ${side} saddle has to stand ${say(off, Math.abs(off.value))} nearer to the ${off.value < 0 ? 'neck' : 'tail'} than the middle of its travel${offBy(off)}. It can move no more than ${say(off, half)} either way.`,
      mend: `Drill the holes of the bridge ${say(off, short)} nearer to the ${tail ? 'tail' : 'neck'} at the ${side} side.`,
      against: [
        { at: travel.id, text: 'how far a saddle can move in all' },
        ...mounts.holes.map((leaf) => ({ at: leaf.id, text: 'a hole of the bridge' })),
      ],
      hangsOn: [`saddle.${side}.from-middle`],
    },
  ];
}
