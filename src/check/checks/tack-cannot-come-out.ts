/** A headless pin in the joint cannot be drawn: nobody is told to draw it, or counts on it. */
import type { Check } from '../check.ts';
import { look } from '../check.ts';
import { kindNamed, lineOf, nameOf, rowOf, tacksToLookAt } from '../tacks.ts';

const check: Check = {
  id: 'tack-cannot-come-out',
  stage: 'derived',
  severity: 'error',
  why: 'The count of tacks drawn would never be full: somebody levers the joint open for them, or learns to saw without the count.',
  mend: 'Take out `out`: a pin in the glue face stays in the wood.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'tacks: { kind: pin-14, count: 2, off-mark: 0.5 }',
    fails: 'tacks: { kind: pin-14, count: 2, off-mark: 0.5, out: after-press }',
  },
  run: (bench) => {
    const found = tacksToLookAt(bench).map((tack) => ({
      tack,
      seen: look(bench.facts, (use) => {
        const { face } = rowOf(bench, use, tack);
        const { out } = lineOf(bench, use);
        return {
          face: use(face),
          at: face.id,
          kind: kindNamed(bench, use, tack),
          ...(out ? { out: use(out), outId: out.id } : {}),
        };
      }),
    }));
    // With some that come out, the line says when; only where all are pins there is nothing to draw.
    if (found.length === 0 || found.some(({ seen }) => seen?.face !== 'glue-face')) return [];
    const [{ tack, seen }] = found as [(typeof found)[number]];
    if (seen?.out === undefined || seen.outId === undefined) return [];
    return [
      {
        at: seen.outId,
        what: `The tacks are to come out ${WHEN[seen.out]}. ${nameOf(tack)} is a pin in the glue face, and so are all: none can be drawn.`,
        mend: 'Take out `out`, or take tacks driven from a face.',
        against: [
          { at: seen.at, text: 'the face it stands in' },
          { at: seen.kind, text: 'the tack' },
        ],
      },
    ];
  },
};
export default check;

const WHEN = {
  'before-press': 'before the press',
  'after-press': 'after the press',
  'before-trim': 'before the trim saw',
};
