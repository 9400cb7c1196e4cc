/** No blank is wider than its machine takes. */
import type { Check } from '../check.ts';
import { feedFaults } from '../feeds.ts';

const check: Check = {
  id: 'feed-too-wide',
  stage: 'derived',
  severity: 'error',
  why: 'A joined blank that does not go between the sides of the machine has to be taken apart again.',
  mend: 'Plane the pieces before they are joined, or draw the blank narrower.',
  example: { file: 'models/plant/plant.yaml', passes: 'widest: 650', fails: 'widest: 320' },
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
