/** The set-ups can hold every depth and every thickness left, at worst. */
import { namesOf } from '../../facts/row.ts';
import { facesBack } from '../../facts/parts.ts';
import type { Facts } from '../../facts/facts.ts';
import type { Subject } from '../../facts/subject.ts';
import type { Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { halfOf, say, saySpread, sayStack } from '../say.ts';
import { cut, cuts, gap, ideal, rect, section, shape, slab } from '../sketch.ts';

const check: Check = {
  id: 'depth-not-held',
  stage: 'derived',
  severity: 'error',
  why: 'Set up right and cut right, some bodies would still come out with the cavity too deep or too shallow: through the top, or too thick for the part that goes in.',
  mend: 'Widen the limits, draw in what goes into the distance, or let the set-up face, or touch off on, what it is measured from.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'depth: 19.0 ±0.2',
    fails: 'depth: 19.0 ±0.1',
  },
  sketch: section(
    slab(),
    cuts(cut({ from: 10, to: 50, depth: 11 })),
    shape(rect(10.3, 8, 49.7, 14), 'removed'),
    ideal('M 10 9.8 H 50 M 10 12.2 H 50'),
    gap(30, 8, 14),
  ),
  run: ({ subject, facts }) => [
    ...namesOf(subject.spec.cavities).flatMap((id) => fault(subject, facts, 'cavity', id)),
    ...namesOf(subject.spec.holes).flatMap((id) => fault(subject, facts, 'hole', id)),
  ],
};
export default check;

function fault({ spec }: Subject, facts: Facts, kind: 'cavity' | 'hole', id: string): Fault[] {
  const seen = look(facts, (use) => ({
    required: use.fact(`${kind}.${id}.required`),
    achieved: use.fact(`${kind}.${id}.achieved`),
  }));
  if (!seen) return [];
  const { required, achieved } = seen;
  const room = {
    down: required.value - (required.low ?? required.value),
    up: (required.high ?? required.value) - required.value,
  };
  const need = {
    down: achieved.value - (achieved.low ?? achieved.value),
    up: (achieved.high ?? achieved.value) - achieved.value,
  };
  if (need.down <= room.down && need.up <= room.up) return [];
  const causes = achieved.causes ?? [];
  const against = causes.flatMap((cause) => {
    const half = say(required, halfOf(cause));
    return /[1-9]/.test(half) ? [{ at: cause.cause.replace(/#.*/, ''), text: `±${half} of it comes from here` }] : [];
  });
  const unfaced = facesBack(spec)
    ? ''
    : ' No set-up faces the back, so all that the thickness of the blank varies goes into it.';
  const cut = kind === 'cavity' ? spec.cavities![id]! : spec.holes![id]!;
  const given = ('floor' in cut ? cut.floor : undefined) ?? cut.depth;
  const off = saySpread(required, need.down, need.up);
  return [
    {
      at: given?.id ?? `${kind}.${id}.required`,
      what: `The ${given === cut.depth ? 'depth' : 'floor'} of ${id}, ${say(required, required.value)}, is to be held within ${saySpread(required, room.down, room.up)}. At worst it is off by ${sayStack(required, causes, off)}.${unfaced}`,
      mend: `Widen its limits to ${off}, or draw in the limits of what goes into it. Or let the set-up that cuts it face the surface it is measured from, or touch off on it.`,
      against,
    },
  ];
}
