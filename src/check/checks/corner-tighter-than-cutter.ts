/** The cutter of a cavity gets into its corners. */
import { namesOf, row } from '../../facts/row.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { say } from '../say.ts';

const check: Check = {
  id: 'corner-tighter-than-cutter',
  stage: 'derived',
  severity: 'error',
  why: 'A cutter leaves its own radius in a corner: what is to go in there does not.',
  mend: 'Name a thinner cutter, or draw the corners rounder.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'depth: 19.0 ±0.2\n    corner: 4',
    fails: 'depth: 19.0 ±0.2\n    corner: 3',
  },
  run: (bench) => namesOf(bench.subject.spec.cavities).flatMap((id) => fault(bench, id)),
};
export default check;

function fault({ subject: { spec, plant }, facts }: Bench, id: string): Fault[] {
  const seen = look(facts, (use) => {
    const { corner, cutter } = spec.cavities![id]!;
    const { diameter } = row(plant.cutters, use(cutter), 'plant.cutters');
    return { corner: use(corner), at: corner.id, name: use(cutter), diameter: use(diameter), row: diameter.id };
  });
  if (!seen || seen.diameter.value <= 2 * seen.corner.value) return [];
  const { corner, diameter, name, at } = seen;
  const radius = diameter.value / 2;
  return [
    {
      at,
      what: `A corner of ${say(corner, corner.value)} cannot be cut with ${name}: it leaves ${say(corner, diameter.value)} ÷ 2 = ${say(corner, radius)}.`,
      mend: `Draw the corners at least ${say(corner, radius)}, or name a cutter of at most ${say(corner, 2 * corner.value)}.`,
      against: [{ at: seen.row, text: 'diameter of the cutter' }],
    },
  ];
}
