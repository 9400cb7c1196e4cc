/** The ridges between the paths of the carve are no higher than the marks that sanding is meant to take out. */
import type { Leaf } from '../../facts/leaf.ts';
import { cutterOf } from '../../facts/cutter-row.ts';
import { namesOf, row } from '../../facts/row.ts';
import { stepOfBall } from '../../geometry/cusp.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { say } from '../say.ts';
import { cutter, gap, line, scallops, section, slab } from '../sketch.ts';

const check: Check = {
  id: 'cusp-too-high',
  stage: 'derived',
  severity: 'error',
  why: 'Sanding takes off what it is told and leaves ridges in the face, or goes on and sands the shape away.',
  mend: 'Step over less, or let sanding take out deeper marks: `marks` of the line.',
  example: { file: 'models/plant/plant.yaml', passes: 'step-over: 1.5', fails: 'step-over: 3' },
  sketch: section(
    slab({ face: scallops(2, 58, 8, 2.2) }),
    cutter({ x: 22, tip: 2.2, width: 9, ball: true }),
    line('M 42 0 H 50', 'thin'),
    gap(46, 0, 2.2),
  ),
  run: (bench) => {
    const { spec } = bench.subject;
    const carve = spec.setups.top?.cutters?.carve;
    return [
      ...(carve ? fault(bench, 'carve', carve) : []),
      ...namesOf(spec.contours).flatMap((id) => fault(bench, `contour.${id}`, spec.contours![id]!.cutter)),
    ];
  },
};
export default check;

const MM = 1e6;

function fault({ subject: { spec, plant }, facts }: Bench, what: string, named: Leaf<string>): Fault[] {
  const seen = look(facts, (use) => {
    const { marks } = row(plant.lines, use(spec.line), 'plant.lines').machined;
    const cutter = cutterOf(plant, use, named);
    const over = cutter.row['step-over'];
    return {
      most: use.fact(`cusp.${what}.most`),
      steepest: use.fact(`cusp.${what}.steepest`),
      marks: { at: marks.id, q: use(marks) },
      name: cutter.id,
      kind: use(cutter.row.kind),
      radiusMm: use(cutter.row.diameter).value / 2 / MM,
      over: over && { at: over.id, q: use(over) },
    };
  });
  if (!seen?.over || seen.most.value <= seen.marks.q.value) return [];
  const { most, steepest, marks, name, kind, over, radiusMm } = seen;
  const cuspMm = marks.q.value / MM;
  // Near enough where it bulges, too: that is a few per cent of the cusp, taken off its square.
  const share = Math.sqrt(marks.q.value / most.value);
  const level = stepOfBall(radiusMm, cuspMm, (steepest.value * Math.PI) / 180);
  const step = Math.floor(Math.min(level, (over.q.value / MM) * share) * 100) / 100;
  const place = what === 'carve' ? 'the carve' : what.replace('contour.', 'contour ');
  return [
    {
      at: over.at,
      what: `At this step over ${name} leaves ridges of up to ${say3(most.value)} on ${place}; sanding is meant to take out marks of ${say3(marks.q.value)}.`,
      mend:
        kind === 'ball'
          ? `Step over by ${say(over.q, step * MM)} at most, or let sanding take out deeper marks.`
          : 'Cut it with a ball cutter, step over less, or let sanding take out deeper marks.',
      against: [
        { at: marks.at, text: 'the marks sanding is meant to take out' },
        { at: named.id, text: 'where the model cuts with it' },
      ],
      hangsOn: [`cusp.${what}.most`],
    },
  ];
}

const say3 = (nm: number): string => say({ unit: 'mm', decimals: 3 }, nm);
