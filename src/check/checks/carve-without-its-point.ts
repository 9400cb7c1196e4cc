/** The machined body is given at the point its top is measured at: crown of an arch, face of a flat or bevelled top. */
import { pointsOf } from '../../facts/parts.ts';
import type { Check } from '../check.ts';
import { look } from '../check.ts';
import { gap, ideal, line, rect, section, shape, slab } from '../sketch.ts';

const check: Check = {
  id: 'carve-without-its-point',
  stage: 'spec',
  severity: 'error',
  why: 'The gauge would be put down where the top is not: an arch has no face, a flat top no crown.',
  mend: 'Give the thickness of the machined and the white body at the crown of an arched top, at the face of any other.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'carve: { kind: arched, land: { width: 11 }, recurve: { at: 26, depth: 0.8 }, crown: { from: 95 } }',
    fails: 'carve: { kind: flat }',
    also: ['cutter-of-wrong-kind'],
  },
  sketch: section(
    slab({ top: 3 }),
    ideal('M 2 3 C 16 -4.4 44 -4.4 58 3'),
    shape(rect(29, -8, 31, -2.7), 'metal', 'edge'),
    line('M 25 -8 H 35'),
    gap(38, -2.2, 3, 'end'),
  ),
  run: ({ subject: { spec }, facts }) => {
    const kind = look(facts, (use) => use(spec.carve.kind));
    const point = kind === 'arched' ? 'crown' : 'face';
    const given = pointsOf(spec, 'machined');
    if (kind === undefined || given.length === 0 || given.includes(point)) return [];
    return [
      {
        at: spec.carve.kind.id,
        what: `The top is ${kind}, and the thickness of the machined body is given at the ${given.join(' and ')}, not at the ${point}.`,
        mend: `Give the thickness of the machined and the white body at the ${point}, or name another kind of carve.`,
        against: given.map((at) => ({ at: `thickness.body.machined.${at}`, text: `the thickness at the ${at}` })),
      },
    ];
  },
};
export default check;
