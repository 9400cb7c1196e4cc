/** A hole is drilled with a drill of its own diameter, through a jig too. */
import type { Leaf } from '../../facts/leaf.ts';
import { namesOf, row } from '../../facts/row.ts';
import type { Length } from '../../units/quantity.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { say } from '../say.ts';
import { across, bore, cuts, drill, ideal, section, slab } from '../sketch.ts';

/** A drill is no truer than this to its own size: 8 mm and .315 in are one drill. */
const SAME_NM = 20_000;

/** Between a hole of a pattern and the drill that makes it: what reaming and a fit may add. Common practice, no source. */
const REAMED_NM = 300_000;

const check: Check = {
  id: 'drill-of-another-size',
  stage: 'derived',
  severity: 'error',
  why: 'The card would give one diameter and the drill makes another: a stud rattles, a screw splits the wood.',
  mend: 'Name the drill of that diameter, or the diameter of the drill.',
  example: {
    file: 'models/base/bolt-on.yaml',
    passes: 'at: { x: 0, y: 183 },\n      diameter: 8 +0.05/-0,',
    fails: 'at: { x: 0, y: 183 },\n      diameter: 9 +0.05/-0,',
  },
  sketch: section(
    slab(),
    cuts(bore({ from: [30, 0], to: [30, 12], width: 10 })),
    drill([30, -9], [30, 12], 10),
    ideal('M 27 0 V 12 M 33 0 V 12'),
    across(4, 25, 35),
  ),
  run: (bench) => {
    const { holes, channels } = bench.subject.spec;
    return [
      ...[holes, channels].flatMap((table) => namesOf(table).flatMap((id) => fault(bench, table![id]!))),
      ...jigFaults(bench),
    ];
  },
};
export default check;

interface Drilled {
  readonly diameter: Leaf<Length>;
  readonly drill: Leaf<string>;
}

function fault({ subject: { plant }, facts }: Bench, { diameter, drill }: Drilled): Fault[] {
  const seen = look(facts, (use) => {
    const of = row(plant.cutters, use(drill), 'plant.cutters').diameter;
    return { hole: use(diameter), at: diameter.id, drill: use(of), row: of.id, name: use(drill) };
  });
  if (!seen || Math.abs(seen.hole.value - seen.drill.value) <= SAME_NM) return [];
  const { hole, drill: own, name, at } = seen;
  return [
    {
      at,
      what: `The hole is to be ${say(hole, hole.value)}, and ${name} drills ${say(hole, own.value)}.`,
      mend: `Name a drill of ${say(hole, hole.value)}, or make the hole ${say(hole, own.value)}.`,
      against: [{ at: seen.row, text: 'diameter of the drill' }],
    },
  ];
}

/** What the drill of a bushing makes, beside the hole of the pattern. */
function jigFaults({ subject: { spec, plant }, facts }: Bench): Fault[] {
  const holes = look(facts, (use) => {
    const { pattern, bushings } = row(plant.jigs, use(spec.location.jig), 'plant.jigs');
    const of = row(plant.patterns, use(pattern), 'plant.patterns').holes;
    return namesOf(bushings).flatMap((id) => {
      const { drill } = bushings![id]!;
      const diameter = of[id]?.diameter;
      return diameter ? [{ id, hole: use(diameter), at: diameter.id, drill: use(drill), row: drill.id }] : [];
    });
  });
  return (holes ?? []).flatMap(({ id, hole, at, drill, row: by }) => {
    const [thin, thick] = [drill.low ?? drill.value, drill.high ?? drill.value];
    const [least, most] = [hole.low ?? hole.value, hole.high ?? hole.value];
    if (thick <= most + REAMED_NM && thin >= least - REAMED_NM) return [];
    return [
      {
        at,
        what: `Hole ${id} of the pattern is to be ${from(hole, least, most)}, and the jig drills it with a drill of ${from(drill, thin, thick)}.`,
        mend: `Give the bushing a drill of ${say(hole, least)}, or make the hole that of the drill.`,
        against: [{ at: by, text: 'the drill of the bushing' }],
      },
    ];
  });
}

const from = (q: Length, low: number, high: number): string =>
  low === high ? say(q, low) : `${say(q, low)} to ${say(q, high)}`;
