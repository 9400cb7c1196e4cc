/** A depth is counted from the face the tool comes from. */
import { surfacesNotThere } from '../../facts/parts.ts';
import { namesOf } from '../../facts/row.ts';
import type { Leaf } from '../../facts/leaf.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { asked, BACK, cut, cuts, gap, line, section, slab } from '../sketch.ts';

/** Faces a tool comes from in each set-up. */
const FACES: Readonly<Record<string, readonly string[]>> = {
  'glue-face': ['glue-face'],
  back: ['back-face', 'blank-back'],
  top: ['cap-face', 'slab-face', 'machined-top'],
};

const check: Check = {
  id: 'depth-from-far-side',
  stage: 'spec',
  severity: 'error',
  why: 'Counted from the far side, deeper means shallower: the cutter goes where nobody meant it.',
  mend: 'Count the depth from the face the tool comes from, or give the wood left (floor).',
  example: {
    file: 'models/tarn.yaml',
    passes: 'from: cap-face\n    depth: 19.0',
    fails: 'from: back-face\n    depth: 19.0',
  },
  sketch: section(
    slab(),
    cuts(cut({ from: 10, to: 50, depth: 7 })),
    asked([20, 0], [20, 7]),
    line('M 16 0 H 24', 'thin'),
    gap(38, 7, BACK),
  ),
  run: (bench) => {
    const { cavities, holes } = bench.subject.spec;
    return [
      ...namesOf(cavities).flatMap((id) => fault(bench, id, cavities![id]!)),
      ...namesOf(holes).flatMap((id) => fault(bench, id, holes![id]!)),
    ];
  },
};
export default check;

function fault(
  { subject: { spec }, facts }: Bench,
  id: string,
  cut: { setup: Leaf<string>; from?: Leaf<string> },
): Fault[] {
  const { from } = cut;
  const seen = from && look(facts, (use) => ({ setup: use(cut.setup), from: use(from) }));
  const gone = surfacesNotThere(spec);
  const faces = seen && FACES[seen.setup]?.filter((face) => !gone.includes(face));
  if (!seen || !faces || faces.includes(seen.from)) return [];
  return [
    {
      at: from.id,
      what: `${id} is cut in set-up ${seen.setup}, and its depth is counted from the far side: from the ${seen.from}.`,
      mend: `Count it from ${faces.join(' or ')}, or cut it in the set-up in which the ${seen.from} looks up.`,
      against: [{ at: cut.setup.id, text: 'the set-up that cuts it' }],
      hangsOn: ['timber.slab', 'timber.cap', 'timber.back'],
    },
  ];
}
