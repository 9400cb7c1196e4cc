/** No tack is driven through a face that is seen: only a pin in the joint may stand inside the outline. */
import type { Check } from '../check.ts';
import { look } from '../check.ts';
import { sayPoint } from '../say.ts';
import { ring, section, slab, tack } from '../sketch.ts';
import { kindNamed, nameOf, rowOf, tacksToLookAt } from '../tacks.ts';

const check: Check = {
  id: 'tack-shows',
  stage: 'derived',
  severity: 'error',
  why: 'The hole of a tack shows in the face it was driven through, plugged or not, and under a clear finish most of all.',
  mend: 'Put it in the waste, or take a headless pin that stands in the glue face.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'face: glue-face, length: 14,',
    fails: 'face: cap-face, length: 26,',
  },
  sketch: section(slab({ glue: 7 }), tack(30, 0, 13, true), ring(30, 0, 3.2)),
  run: (bench) =>
    tacksToLookAt(bench).flatMap((tack) => {
      const seen = look(bench.facts, (use) => {
        const { face } = rowOf(bench, use, tack);
        const spot = use.fact(`tack.${tack.id}.spot`);
        return { face: use(face), faceId: face.id, spot, kind: kindNamed(bench, use, tack) };
      });
      if (!seen?.spot.inBody || seen.face === 'glue-face') return [];
      const { xMm: x, yMm: y } = seen.spot;
      const face = seen.face === 'cap-face' ? 'the face of the cap' : 'the back';
      return [
        {
          at: tack.at,
          what: `${nameOf(tack)}, at ${sayPoint({ x, y }, bench.subject.hand)}, is driven through ${face} inside the outline: its hole stays.`,
          mend: 'Move it outside the outline, between the saw cuts, or take a pin that stands in the glue face.',
          against: [
            { at: seen.faceId, text: 'the face it is driven from' },
            { at: seen.kind, text: 'which kind of tack it is' },
          ],
        },
      ];
    }),
};
export default check;
