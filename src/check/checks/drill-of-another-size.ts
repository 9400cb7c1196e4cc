/** A hole is drilled with a drill of its own diameter. */
import { namesOf, row } from '../../facts/row.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { say } from '../say.ts';

/** A drill is no truer than this to its own size: 8 mm and .315 in are one drill. */
const SAME_NM = 20_000;

const check: Check = {
  id: 'drill-of-another-size',
  stage: 'derived',
  severity: 'error',
  why: 'The card would give one diameter and the drill makes another: a stud rattles, a screw splits the wood.',
  mend: 'Name the drill of that diameter, or the diameter of the drill.',
  example: {
    file: 'models/base/bolt-on.yaml',
    passes: '{ setup: back, at: { x: 0, y: 183 }, diameter: 8,',
    fails: '{ setup: back, at: { x: 0, y: 183 }, diameter: 9,',
  },
  run: (bench) => namesOf(bench.subject.spec.holes).flatMap((id) => fault(bench, id)),
};
export default check;

function fault({ subject: { spec, plant }, facts }: Bench, id: string): Fault[] {
  const seen = look(facts, (use) => {
    const { diameter, drill } = spec.holes![id]!;
    const of = row(plant.cutters, use(drill), 'plant.cutters').diameter;
    return { hole: use(diameter), at: diameter.id, drill: use(of), row: of.id, name: use(drill) };
  });
  if (!seen || Math.abs(seen.hole.value - seen.drill.value) <= SAME_NM) return [];
  const { hole, drill, name, at } = seen;
  return [
    {
      at,
      what: `The hole is to be ${say(hole, hole.value)}, and ${name} drills ${say(hole, drill.value)}.`,
      mend: `Name a drill of ${say(hole, hole.value)}, or make the hole ${say(hole, drill.value)}.`,
      against: [{ at: seen.row, text: 'diameter of the drill' }],
    },
  ];
}
