/** No end mill is asked to cut deeper than it can stand: past some diameters it bends, chatters and breaks. */
import { namesOf, row } from '../../facts/row.ts';
import { formatNumber } from '../../units/format.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { say } from '../say.ts';
import { cuts, ideal, polygon, ring, section, shape, slab } from '../sketch.ts';

/** Depth by diameter; common practice, no source. The maker's own figure comes first. */
const MOST = 5;

const check: Check = {
  id: 'cutter-too-slender',
  stage: 'derived',
  severity: 'caution',
  why: 'It bends and leaves the wall out of true, then it breaks, and a piece of it flies.',
  mend: 'Name a thicker cutter, or cut less deep.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'diameter: 12\n    reach: 48',
    fails: 'diameter: 7\n    reach: 48',
  },
  sketch: section(
    slab(),
    cuts({ wall: 'M 14 0 V 15 H 37.4 C 34 10 33 6 32.6 0', air: 'M 14 -0.6 V 15 H 37.4 C 34 10 33 6 32.6 -0.6 Z' }),
    shape('M 29 -6 H 32 V 0 C 32 5 33.6 10 37 14.6 L 34.4 15 C 31 10.6 29 5.4 29 0 Z', 'metal', 'edge'),
    shape(polygon([27, -9], [34, -9], [34, -7.4], [33, -6], [28, -6], [27, -7.4]), 'metal', 'edge'),
    ideal('M 32.6 0 V 15'),
    ring(36, 11.6, 3.2),
  ),
  run: (bench) => namesOf(bench.subject.spec.cavities).flatMap((id) => fault(bench, id)),
};
export default check;

function fault({ subject: { spec, plant }, facts }: Bench, id: string): Fault[] {
  const seen = look(facts, (use) => {
    const { cutter } = spec.cavities![id]!;
    const { diameter, kind } = row(plant.cutters, use(cutter), 'plant.cutters');
    const deep = use.fact(`cavity.${id}.deep`);
    return { at: cutter.id, name: use(cutter), kind: use(kind), diameter: use(diameter), row: diameter.id, deep };
  });
  if (seen?.kind !== 'end-mill') return [];
  const { at, name, diameter, deep } = seen;
  const most = deep.high ?? deep.value;
  if (most <= MOST * diameter.value) return [];
  return [
    {
      at,
      what: `${name} goes ${say(deep, most)} deep here, ${formatNumber(most / diameter.value, '', 1)} times its diameter of ${say(deep, diameter.value)}. More than ${formatNumber(MOST, '', 0)} times is too much for so thin a cutter.`,
      mend: `Name a cutter at least ${say(deep, most / MOST)} thick, or cut no deeper than ${say(deep, MOST * diameter.value)}.`,
      against: [{ at: seen.row, text: 'diameter of the cutter' }],
    },
  ];
}
