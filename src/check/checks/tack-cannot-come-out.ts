/** A headless pin in the joint cannot be drawn: nobody is told to draw it, or counts on it. */
import type { Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { ring, section, slab, tack, way } from '../sketch.ts';
import { kindNamed, rowOf, tacksToLookAt } from '../tacks.ts';

const check: Check = {
  id: 'tack-cannot-come-out',
  stage: 'derived',
  severity: 'error',
  why: 'The count of tacks drawn would never be full: somebody levers the joint open for them, or learns to saw without the count.',
  mend: 'Take `out` away: a pin in the glue face stays in the wood.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'length: 14, diameter: 1.2, bite: 6, edge: 2.5, off-mark: 0.5 }',
    fails: 'length: 14, diameter: 1.2, bite: 6, edge: 2.5, off-mark: 0.5, out: after-press }',
  },
  sketch: section(slab({ glue: 7 }), tack(30, 2.4, 13), ring(30, 7, 4.6), way([30, 0], [30, -7])),
  run: (bench) => {
    const faults = tacksToLookAt(bench).flatMap((tack): Fault[] => {
      const seen = look(bench.facts, (use) => {
        const { face, out, title } = rowOf(bench, use, tack);
        if (!out || use(face) !== 'glue-face') return undefined;
        return { out: use(out), at: out.id, face: face.id, title: use(title), kind: kindNamed(bench, use, tack) };
      });
      if (!seen) return [];
      return [
        {
          at: seen.at,
          what: `${seen.title} is to come out ${WHEN[seen.out]}, and it is a headless pin in the glue face: it cannot be drawn.`,
          mend: 'Take `out` away, or drive it from a face.',
          against: [
            { at: seen.face, text: 'the face it stands in' },
            { at: seen.kind, text: 'which kind of tack it is' },
          ],
        },
      ];
    });
    return faults.filter(({ at }, i) => faults.findIndex((other) => other.at === at) === i);
  },
};
export default check;

const WHEN = {
  'before-press': 'before the press',
  'after-press': 'after the press',
  'before-trim': 'before the trim saw',
};
