/** Cavities lie inside the body; only a neck pocket runs out of it, and that by less than half. */
import { namesOf } from '../../facts/row.ts';
import { regionArea } from '../../geometry/measure.ts';
import { difference } from '../../geometry/offset.ts';
import { formatNumber } from '../../units/format.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { centreline, outline, plan, pocket, ring } from '../sketch.ts';

/** Less than this outside is the rounding of the drawing, mm². */
const ROUNDING_MM2 = 0.5;

const check: Check = {
  id: 'cavity-off-the-body',
  stage: 'derived',
  severity: 'error',
  why: 'The cutter comes out of the side of the body: the edge is gone, and offcuts fly.',
  mend: 'Move the cavity inward, or make it smaller.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'at: { x: 80, y: -100 }\n    floor',
    fails: 'at: { x: 130, y: -100 }\n    floor',
    also: ['cover-lip-narrow', 'cuts-miss'],
  },
  sketch: plan(outline(), centreline(), pocket(-16, 4, -2, 14, 1.5), ring(-9, 11.6, 3.4)),
  run: (bench) => namesOf(bench.subject.spec.cavities).flatMap((id) => fault(bench, id)),
};
export default check;

function fault({ subject: { spec }, facts }: Bench, id: string): Fault[] {
  const cavity = spec.cavities![id]!;
  const seen = look(facts, (use) => ({
    purpose: use(cavity.purpose),
    drawn: use.fact(`cavity.${id}.drawn`),
    outline: use.fact('outline.polygon'),
    at: use(cavity.at.x) && cavity.at.x.id,
  }));
  if (!seen?.drawn.ok) return [];
  const outsideMm2 = Math.abs(regionArea(difference([seen.drawn.polygon], [seen.outline])));
  const wholeMm2 = Math.abs(regionArea([seen.drawn.polygon]));
  if (outsideMm2 <= (seen.purpose === 'neck' ? wholeMm2 / 2 : ROUNDING_MM2)) return [];
  return [
    {
      at: cavity.at.x.id,
      what: `${formatNumber(outsideMm2 / 1e6, 'mm²', 0)} mm² of the cavity ${id} lie outside the body.`,
      mend: 'Move it inward, or make it smaller.',
      against: [{ at: 'outline.path', text: 'the outline' }],
      hangsOn: [`cavity.${id}.drawn`],
    },
  ];
}
