/** The joint fret lies where the body ends: two numbers that say the same thing. */
import type { Check } from '../check.ts';
import { look } from '../check.ts';
import { say } from '../say.ts';
import { across, line, neckEnd, neckPlan, plan } from '../sketch.ts';

const check: Check = {
  id: 'joint-off-the-edge',
  stage: 'derived',
  severity: 'error',
  why: 'One of scale, fret and outline is a slip: the whole pocket, or the bridge, is then cut in another place than the neck was made for.',
  mend: 'Look at scale length, joint fret and outline once more.',
  example: {
    file: 'models/base/bolt-on.yaml',
    passes: 'joint-fret: 18',
    fails: 'joint-fret: 17',
  },
  sketch: plan(
    neckEnd(8),
    neckPlan(-8),
    line('M 2 -4.5 V 4.5 M 9 -4.5 V 4.5 M 23 -4.5 V 4.5', 'thin'),
    line('M 16 -9 V 4.5'),
    line('M 8 -9 V -1', 'thin'),
    across(-7, 8, 16),
  ),
  run: ({ subject: { spec }, facts }) => {
    const seen = look(facts, (use) => ({ edge: use.fact('neck.edge'), joint: use.fact('neck.joint-line') }));
    if (!seen) return [];
    const { edge, joint } = seen;
    const off = edge.value - joint.value;
    if (Math.abs(off) <= OFF_NM) return [];
    return [
      {
        at: spec.neck['joint-fret'].id,
        what: `The joint fret lies ${say(edge, joint.value)} from the bridge line, and the body ends at ${say(edge, edge.value)}: ${say(edge, Math.abs(off))} ${off > 0 ? 'beyond' : 'short of'} it.`,
        mend: 'Look at scale length, joint fret and outline once more.',
        against: [
          { at: spec.neck.scale.id, text: 'the scale length' },
          { at: spec.outline.path.id, text: 'the outline' },
        ],
        hangsOn: ['neck.joint-line', 'neck.edge'],
      },
    ];
  },
};
export default check;

/** Half of the distance of two frets at a joint, about: nearer than that, it is meant. Common practice, no source. */
const OFF_NM = 5_000_000;
