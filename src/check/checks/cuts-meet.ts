/** Two cuts that open to one face overlap only where they are meant to. */
import type { Cut } from '../../facts/cuts.ts';
import { meantToMeet, pairsOf } from '../../facts/cuts.ts';
import { formatNumber } from '../../units/format.ts';
import type { Bench, Check } from '../check.ts';
import { look } from '../check.ts';
import { sayPoint } from '../say.ts';
import { centreline, hole, outline, plan, pocket, ring } from '../sketch.ts';
import { intoOf } from '../thin.ts';

const check: Check = {
  id: 'cuts-meet',
  stage: 'derived',
  severity: 'error',
  why: 'One cut takes away the wood that the other should leave: a screw with no wood round it, a cavity with an open side.',
  mend: 'Move one of the two, or say with `into` that they are meant to meet.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'stud-b:\n    {\n      setup: top,\n      at: { x: 37, y: -3 }',
    fails: 'stud-b:\n    {\n      setup: top,\n      at: { x: 37, y: 24 }',
  },
  sketch: plan(outline(), centreline(), pocket(-16, -6, 0, 6, 1.5), hole(1.4, 3, 3), ring(0, 3, 5)),
  run: (bench) => {
    const { subject, facts } = bench;
    return pairsOf(subject.spec).flatMap(({ a, b, left }) => {
      const found = look(facts, (use) => !meantToMeet(use, a, b) && use.fact(left));
      if (!found || found.left.mm > -Infinity || seated(bench, a, b)) return [];
      const { xMm, yMm, sharedMm2 } = found.left;
      return [
        {
          at: b.place.id,
          what: `The ${b.kind} ${b.id} and the ${a.kind} ${a.id} open to the same face and overlap by ${formatNumber(sharedMm2 / 1e6, 'mm²', 0)} mm², at ${sayPoint({ x: xMm, y: yMm }, subject.hand)}.`,
          mend: 'Move one of them, or say with `into` that they are meant to meet.',
          against: [{ at: a.place.id, text: `where ${a.id} lies` }],
          hangsOn: [left, ...intoOf(a), ...intoOf(b)],
        },
      ];
    });
  },
};
export default check;

/** A cover's seat is cut round what it covers, and its screws stand in it. */
function seated({ subject: { spec }, facts }: Bench, a: Cut, b: Cut): boolean {
  const isSeat = ({ kind, id }: Cut) =>
    kind === 'cavity' && look(facts, (use) => use(spec.cavities![id]!.purpose)) === 'recess';
  return isSeat(a) || isSeat(b);
}
