/** Every depth leaves the gauge limits to read at the machine. */
import { namesOf } from '../../facts/row.ts';
import type { Facts } from '../../facts/facts.ts';
import type { Subject } from '../../facts/subject.ts';
import type { Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { say } from '../say.ts';
import { cut, cuts, depthGauge, gap, ideal, rect, section, shape, slab } from '../sketch.ts';

const check: Check = {
  id: 'depth-not-measurable',
  stage: 'derived',
  severity: 'error',
  why: 'No reading at the machine proves the depth: whatever the gauge shows, the wood that counts may still be out.',
  mend: 'Widen the limits, or measure from a surface nearer to what the depth must hold.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'from: cap-face\n    depth: 19.0 ±0.2',
    fails: 'from: machined-top\n    depth: 19.0 ±0.1',
  },
  sketch: section(
    slab(),
    shape(rect(2, 0, 58, 3.4), 'removed'),
    cuts(cut({ from: 26, to: 44, depth: 11 })),
    ideal('M 2 3.4 H 26 M 44 3.4 H 58'),
    depthGauge(35, 10.7, 20, 50),
    gap(14, 0, 3.4),
  ),
  run: ({ subject: { spec }, facts }) => [
    ...namesOf(spec.cavities).flatMap((id) => fault(spec, facts, 'cavity', id)),
    ...namesOf(spec.holes).flatMap((id) => fault(spec, facts, 'hole', id)),
  ],
};
export default check;

function fault(spec: Subject['spec'], facts: Facts, kind: 'cavity' | 'hole', id: string): Fault[] {
  const seen = look(facts, (use) => ({
    required: use.fact(`${kind}.${id}.required`),
    achieved: use.fact(`${kind}.${id}.achieved`),
    measuring: use.fact(`${kind}.${id}.measuring`),
  }));
  if (!seen) return [];
  const { required, achieved, measuring } = seen;
  const held = (achieved.low ?? 0) >= (required.low ?? 0) && (achieved.high ?? 0) <= (required.high ?? 0);
  const { low = 0, high = 0 } = measuring.limits;
  // A depth the set-ups cannot hold is said by the check of that.
  if (!held || low <= high) return [];
  const cut = kind === 'cavity' ? spec.cavities![id]! : spec.holes![id]!;
  const given = ('floor' in cut ? cut.floor : undefined) ?? cut.depth;
  return [
    {
      at: given?.id ?? `${kind}.${id}.required`,
      what: `Measured from the ${measuring.from}, no reading proves ${id}: it would have to read at least ${say(required, low)} and at most ${say(required, high)}.`,
      mend: `Widen its limits by ${say(required, low - high)} in all, or measure it from a surface nearer to what it must hold.`,
      against: [],
    },
  ];
}
