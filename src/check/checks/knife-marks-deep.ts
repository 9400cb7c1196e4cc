/** The knife marks of the planer are no deeper than what sizing is meant to take out. */
import type { Part } from '../../facts/parts.ts';
import { partsOf } from '../../facts/parts.ts';
import { row, wanted } from '../../facts/row.ts';
import { machineNumber } from '../../facts/station-machine.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { say } from '../say.ts';
import { ideal, ring, scallops, section, slab } from '../sketch.ts';

const check: Check = {
  id: 'knife-marks-deep',
  stage: 'derived',
  severity: 'error',
  why: 'The belt takes off what it is told, and waves of the planer are left in a glue face.',
  mend: 'Feed slower, turn faster, or allow sizing deeper marks.',
  example: { file: 'models/plant/plant.yaml', passes: 'feed-speed: 12 m/min', fails: 'feed-speed: 120 m/min' },
  sketch: section(slab({ face: scallops(2, 58, 14, 4) }), ideal('M 1 2 H 59'), ring(37, 3.4, 3.4, 'lower-right')),
  run: (bench) => partsOf(bench.subject.spec).flatMap((part) => fault(bench, part)),
};
export default check;

function fault({ subject: { spec, plant }, facts }: Bench, part: Part): Fault[] {
  const seen = look(facts, (use) => {
    const line = use(spec.line);
    const { marks } = wanted(row(plant.lines, line, 'plant.lines')[part], `plant.lines.${line}.${part}`).planed[
      'least-removal'
    ];
    return {
      at: machineNumber(plant, use, 'planing', 'feed-speed').id,
      depth: use.fact('planing.knife-depth'),
      pitch: use.fact('planing.knife-pitch'),
      marks: use(marks),
      id: marks.id,
    };
  });
  if (!seen || seen.depth.value <= seen.marks.value) return [];
  const { at, depth, pitch, marks, id } = seen;
  return [
    {
      at,
      what: `At this feed the knives leave marks ${say(pitch, pitch.value)} apart and ${say(depth, depth.value)} deep; sizing is meant to take out ${say(marks, marks.value)} on the ${part}.`,
      mend: 'Feed slower, or allow deeper marks where the line says what sizing must clear.',
      against: [{ at: id, text: 'the marks sizing clears' }],
    },
  ];
}
