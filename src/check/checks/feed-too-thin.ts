/** No piece is thinner than its machine feeds. */
import type { Check } from '../check.ts';
import { feedFaults } from '../feeds.ts';
import { gap, line, rect, roller, section, shape } from '../sketch.ts';

const check: Check = {
  id: 'feed-too-thin',
  stage: 'derived',
  severity: 'error',
  why: 'Wood thinner than the machine holds down flutters, shatters under the knives or wraps round the roller.',
  mend: 'Take a machine that holds it, or a carrier the plant allows.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'least-thickness: 4,',
    fails: 'least-thickness: 17,',
  },
  sketch: section(
    line('M 1 13 H 59'),
    shape(rect(2, 11.4, 58, 12.9), 'wood', 'edge'),
    roller(14, 2.6, 5.4),
    roller(46, 2.6, 5.4),
    roller(30, 2.6, 4),
    gap(14, 8, 11.4, 'end'),
  ),
  run: (bench) =>
    feedFaults(bench, {
      limit: 'least-thickness',
      of: ({ thickness }) => thickness,
      passes: (piece, least) => piece >= least,
      what: (part, piece, machine, least) =>
        `The ${part} is ${piece} thick when it leaves the ${machine}, at its thinnest. That machine feeds nothing thinner than ${least}.`,
      mend: (part, lack) =>
        `Leave the ${part} at least ${lack} thicker here, or use a machine or a carrier that holds it.`,
    }),
};
export default check;
