/** The paths of a cutter lie close enough to leave nothing standing between them. */
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { say } from '../say.ts';
import { cutter, ring, section, slab } from '../sketch.ts';
import type { UsedCutter } from '../used-cutters.ts';
import { cuttersOnce } from '../used-cutters.ts';

const check: Check = {
  id: 'step-over-too-wide',
  stage: 'derived',
  severity: 'error',
  why: 'Ridges stay on the floor: a gauge set on one reads wrong, and what is to lie on the floor rocks.',
  mend: 'Take a narrower step over, or a wider cutter.',
  example: { file: 'models/plant/plant.yaml', passes: 'step-over: 42', fails: 'step-over: 62' },
  sketch: section(
    slab({ face: 'H 6 V 5 H 18 V 0.6 H 21 V 5 H 33 V 0.6 H 36 V 5 H 48 V 0 H 58' }),
    cutter({ x: 42, tip: 5, width: 12 }),
    ring(19.5, 2, 3.4),
  ),
  run: (bench) => cuttersOnce(bench).flatMap((used) => fault(bench, used)),
};
export default check;

function fault({ facts }: Bench, { cutter, named }: UsedCutter): Fault[] {
  const { row, id } = cutter;
  const { 'step-over': over, corner } = row;
  if (!over) return [];
  const seen = look(facts, (use) => ({
    ball: use(row.kind) === 'ball',
    diameter: use(row.diameter),
    over: use(over),
    corner: corner ? use(corner).value : 0,
  }));
  if (!seen) return [];
  // Its flat; of a ball all of it, for what stands between its paths is the business of the cusps.
  const flat = seen.ball ? seen.diameter.value : seen.diameter.value - 2 * seen.corner;
  if (seen.over.value <= flat) return [];
  return [
    {
      at: over.id,
      what: `${id} is to step over by ${say(seen.over, seen.over.value)}, and ${flat <= 0 ? 'its end has no flat at all' : `${seen.corner > 0 ? 'its end is flat over' : 'it is'} only ${say(seen.over, flat)}${seen.corner > 0 ? '' : ' wide'}`}.`,
      mend:
        flat > 0
          ? `Step over by ${say(seen.over, flat)} at most.`
          : 'Look at its corner radius: it is more than half of the cutter.',
      against: [
        { at: row.diameter.id, text: 'diameter of the cutter' },
        ...(corner ? [{ at: corner.id, text: 'its corner radius' }] : []),
        { at: named.id, text: 'where the model cuts with it' },
      ],
    },
  ];
}
