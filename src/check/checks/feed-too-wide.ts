/** No blank is wider than its machine takes. */
import type { Check } from '../check.ts';
import { feedFaults } from '../feeds.ts';
import { across, asked, rect, section, shape } from '../sketch.ts';

const check: Check = {
  id: 'feed-too-wide',
  stage: 'derived',
  severity: 'error',
  why: 'A joined blank that does not go between the sides of the machine has to be taken apart again.',
  mend: 'Plane the pieces before they are joined, or draw the blank narrower.',
  example: { file: 'models/plant/plant.yaml', passes: 'widest: 650', fails: 'widest: 320' },
  sketch: section(
    shape(rect(2, 14, 58, 19), 'bed', 'edge'),
    shape(rect(9, -7, 13, 14), 'metal', 'edge'),
    shape(rect(47, -7, 51, 14), 'metal', 'edge'),
    asked([13, -3], [47, -3]),
    shape(rect(5, 6, 55, 13.6), 'wood', 'edge'),
    across(10, 5, 55),
  ),
  run: (bench) =>
    feedFaults(bench, {
      limit: 'widest',
      of: ({ width }) => width,
      passes: (piece, widest) => piece <= widest,
      what: (part, piece, machine, widest) =>
        `The blank of the ${part} is ${piece} wide; the ${machine} takes ${widest} at most.`,
      mend: (_part, lack) =>
        `Draw the blank at least ${lack} narrower (rough line, \`blank-over\`), or use a wider machine.`,
    }),
};
export default check;
