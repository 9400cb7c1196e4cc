/** The saw's blade can follow its line. */
import { row, wanted } from '../../facts/row.ts';
import { leastConcaveRadiusMm } from '../../reference/blades.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { say } from '../say.ts';
import { field, plan, rect, ring, shape } from '../sketch.ts';

const check: Check = {
  id: 'blade-too-wide',
  stage: 'derived',
  severity: 'caution',
  why: 'A blade forced round a bend tighter than it can take twists, burns and breaks.',
  mend: 'Use a narrower blade, make relief cuts first, or draw the bend wider.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'blade-width: 1/4 in',
    fails: 'blade-width: 1 in',
  },
  sketch: plan(
    field(),
    shape('M -20 16 A 20 20 0 0 1 20 16 H 16 A 16 16 0 0 0 -16 16 Z', 'air', 'edge'),
    shape(rect(-13, -3.4, 13, -0.8), 'metal', 'edge'),
    ring(12, -2, 3.4),
  ),
  run: (bench) => [...fault(bench, 'rough-sawing', 'rough'), ...fault(bench, 'trim-sawing', 'trim')],
};
export default check;

function fault({ subject: { plant }, facts }: Bench, station: string, line: 'rough' | 'trim'): Fault[] {
  const seen = look(facts, (use) => {
    const machine = use(wanted(row(plant.stations, station, 'plant.stations').machine, 'machine'));
    const blade = row(plant.machines, machine, 'plant.machines')['blade-width'];
    return blade && { blade: use(blade), row: blade.id, bend: use.fact(`saw.${line}.bend`), machine };
  });
  if (!seen) return [];
  const { blade, bend, machine } = seen;
  const needed = leastConcaveRadiusMm(blade.value / 25_400_000) * 1_000_000;
  if (bend.value >= needed) return [];
  return [
    {
      at: 'outline.path',
      what: `The ${line} line has an inward bend with a radius of ${say(bend, bend.value)}. The ${say(blade, blade.value)} blade of ${machine} can follow no bend tighter than ${say(bend, needed)}.`,
      mend: `Use a narrower blade, make relief cuts first, or draw the body so that the ${line} line bends no tighter than ${say(bend, needed)}.`,
      against: [{ at: seen.row, text: 'width of the blade' }],
    },
  ];
}
