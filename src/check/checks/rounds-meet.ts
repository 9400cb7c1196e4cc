/** The rounds of both edges together are no higher than the edge, at worst. */
import type { Check } from '../check.ts';
import { look } from '../check.ts';
import { shapedAt } from '../shaped.ts';
import { say, offBy, sayPoint } from '../say.ts';
import { ideal, line, ring, section, shape } from '../sketch.ts';

const check: Check = {
  id: 'rounds-meet',
  // Heights and radii are all given: what covers and gaskets find of it comes after.
  stage: 'spec',
  severity: 'error',
  why: 'The second round cuts into the first: no upright edge is left between them, the outline is lost, and the ball bearing of the cutter finds nothing to run on.',
  mend: 'Make one of the two rounds smaller.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'crown: { from: 95 } }\n',
    fails:
      'crown: { from: 95 } }\nedges: { top: { round: 23, cutter: ball-20 }, back: { round: 23, cutter: ball-20 } }\n',
    also: ['cutter-of-wrong-kind'],
  },
  sketch: section(
    shape('M 2 0 H 35 A 17 17 0 0 1 49.7 8.5 A 17 17 0 0 1 35 17 H 2 Z', 'wood'),
    line('M 2 0 H 35 A 17 17 0 0 1 49.7 8.5 A 17 17 0 0 1 35 17 H 2'),
    ideal('M 49.7 8.5 A 17 17 0 0 1 52 17 M 49.7 8.5 A 17 17 0 0 0 52 0 M 52 -2 V 19'),
    ring(49.7, 8.5, 3.2),
  ),
  run: (bench) => {
    const { subject, facts } = bench;
    const { spec, hand } = subject;
    const [top, back] = [spec.edges?.top?.round, spec.edges?.back?.round];
    if (!top || !back) return [];
    const seen = look(facts, (use) => ({
      left: use.fact('edge.between-rounds'),
      top: use(top),
      back: use(back),
    }));
    if (!seen) return [];
    const { length, xMm, yMm } = seen.left;
    const worst = length.low ?? length.value;
    if (worst >= 0) return [];
    const both = seen.top.value + seen.back.value;
    const causes = offBy(length);
    // Whole hundredths, inward.
    const fits = Math.floor((both + worst) / 10_000) * 10_000;
    return [
      {
        at: back.id,
        what: `The rounds of top and back are ${say(length, seen.top.value)} + ${say(length, seen.back.value)} = ${say(length, both)} high. The edge is ${say(length, length.value + both)} high, at ${sayPoint({ x: xMm, y: yMm }, hand)}${causes}: the rounds cut ${say(length, -worst)} into each other at worst.`,
        mend:
          fits > 0
            ? `Make them no more than ${say(length, fits)} together.`
            : 'Leave one out, or leave more wood between top and back there.',
        against: [
          { at: top.id, text: 'the round of the top' },
          ...(['top', 'back'] as const)
            .flatMap((side) => shapedAt(bench, side, xMm, yMm))
            .flatMap(({ at, text, by }) => (by === 'edge' ? [] : [{ at, text }])),
        ],
        hangsOn: ['edge.between-rounds'],
      },
    ];
  },
};
export default check;
