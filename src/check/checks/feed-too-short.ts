/** No piece is shorter than its machine feeds safely. */
import type { Check } from '../check.ts';
import { feedFaults } from '../feeds.ts';
import { across, asked, line, rect, roller, section, shape } from '../sketch.ts';

const check: Check = {
  id: 'feed-too-short',
  stage: 'derived',
  severity: 'error',
  why: 'A piece shorter than the gap between the rollers stops in the machine, tips into the cutter head or is thrown back.',
  mend: 'Plane and sand it longer and cut it to length after, or use a carrier the plant allows.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'kind: jointer, cut-per-pass: 0.8, least-feed: 300',
    fails: 'kind: jointer, cut-per-pass: 0.8, least-feed: 640',
  },
  sketch: section(
    line('M 1 13 H 59'),
    shape(rect(21, 7, 39, 12.8), 'wood', 'edge'),
    roller(10, 2, 5),
    roller(50, 2, 5),
    roller(30, 3, 3.6),
    asked([10, -6], [50, -6]),
    line('M 10 -7.5 V 2 M 50 -7.5 V 2', 'thin'),
    across(10, 21, 39),
  ),
  run: (bench) =>
    feedFaults(bench, {
      limit: 'least-feed',
      of: ({ length }) => length,
      passes: (piece, least) => piece >= least,
      what: (part, piece, machine, least) =>
        `The pieces of the ${part} are ${piece} long; the ${machine} feeds none shorter than ${least}.`,
      mend: (_part, lack) =>
        `Leave the blank at least ${lack} longer, both ends together (\`blank-over\` of the line), or use a machine that feeds it.`,
    }),
};
export default check;
