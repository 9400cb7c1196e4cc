/** A hole or cavity is no deeper than its part can stand. */
import { against, depthAt, fittedParts, highOf } from '../hardware.ts';
import type { Check } from '../check.ts';
import { offBy, say } from '../say.ts';
import { cut, cuts, gap, line, rect, section, shape, slab } from '../sketch.ts';

const check: Check = {
  id: 'too-deep-for-hardware',
  stage: 'derived',
  severity: 'error',
  why: 'The part sinks in: a bushing below the face, a pickup that hangs too low for its screws.',
  mend: 'Cut it less deep, or fit a longer part.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'depth: 12.0..36.0',
    fails: 'depth: 2.0..10.0',
  },
  sketch: section(
    slab(),
    cuts(cut({ from: 16, to: 40, depth: 14 })),
    shape(rect(17, 5, 39, 13.7), 'metal', 'edge'),
    line('M 40 0 H 12', 'thin'),
    gap(28, 0, 5),
  ),
  run: (bench) =>
    fittedParts(bench).flatMap((part) => {
      const { fitted, id, name, row } = part;
      const depth = `fitted.${id}.depth.most` as const;
      const seen = against(bench, depth, row.depth);
      if (!seen || highOf(seen.found) <= seen.asked.high!) return [];
      const { found, asked, at } = seen;
      return [
        {
          at: depthAt(bench, part),
          what: `${name} finds a depth of ${say(asked, found.value)} in ${fitted.id} as drawn${offBy(found)}: up to ${say(asked, highOf(found))}. It may have at most ${say(asked, asked.high!)}.`,
          mend: `Cut ${fitted.id} ${say(asked, highOf(found) - asked.high!)} less deep, or fit another part.`,
          against: [
            { at: fitted.hardware.id, text: 'the part that goes in' },
            { at, text: `the depth ${name} needs` },
            { at: fitted.place.id, text: `where ${fitted.id} lies` },
          ],
          hangsOn: [depth],
        },
      ];
    }),
};
export default check;
