/** Every contour takes wood off the body. */
import { namesOf } from '../../facts/row.ts';
import type { Length } from '../../units/quantity.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { say, sayPoint } from '../say.ts';
import { carve, cuts, EDGE, gap, ideal, section, slab } from '../sketch.ts';

/** No hand feels a contour that is less deep than this, nm. Common practice, no source. */
const FELT_NM = 500_000;

const check: Check = {
  id: 'contour-takes-nothing',
  stage: 'derived',
  severity: 'error',
  why: 'A program and a cutter are used for nothing, and the edge is left sharp where arm or body lies.',
  mend: 'Move the line the contour begins at into the body, or take the contour out.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'crown: { from: 95 } }\n',
    fails:
      'crown: { from: 95 } }\ncontours: { arm: { face: top, kind: plane, from: { x: -160, y: -60 }, to: { x: -160, y: -140 }, slope: 12 deg, cutter: ball-20 } }\n',
  },
  sketch: section(
    slab({ right: EDGE }),
    cuts(carve(10, 'C 26 0 34 9 56 9')),
    ideal('M 18 -5 L 59 4.5'),
    gap(43, 0.9, 8.2),
  ),
  run: (bench) => namesOf(bench.subject.spec.contours).flatMap((id) => fault(bench, id)),
};
export default check;

function fault({ subject: { spec, hand }, facts }: Bench, id: string): Fault[] {
  const { from, to, slope, depth } = spec.contours![id]!;
  const seen = look(facts, (use) => ({
    taken: use.fact(`contour.${id}.taken`),
    slope: slope && Math.tan((use(slope).value * Math.PI) / 180),
  }));
  if (!seen || seen.taken.length.value >= FELT_NM) return [];
  const { length, reach, xMm, yMm } = seen.taken;
  const where =
    reach.value <= 0
      ? `The line that contour ${id} begins at lies ${say(reach, -reach.value)} outside the body, so it takes nothing off.`
      : length.value <= 0
        ? `Contour ${id} takes nothing off: what it would cut lies outside the body, or is cut deeper by the carve, an edge or another contour.`
        : `Contour ${id} takes ${say(length, length.value)} off at its deepest, at ${sayPoint({ x: xMm, y: yMm }, hand)}.`;
  const deep = slope ?? depth;
  return [
    {
      at: from.x.id,
      what: `${where} Less than ${say(length, FELT_NM)} is not felt by a hand.`,
      mend: mendOf(id, reach, seen.slope),
      against: [
        { at: to.x.id, text: 'the other end of its line' },
        ...(deep ? [{ at: deep.id, text: slope ? 'how steep it is' : 'how deep it is' }] : []),
        { at: 'outline.path', text: 'the outline' },
      ],
      hangsOn: [`contour.${id}.taken`],
    },
  ];
}

/** Of a plane on a level face; a hollow, or a carved top, needs more than that. */
function mendOf(id: string, reach: Length, slope: number | undefined): string {
  const needed = slope === undefined ? 0 : FELT_NM / slope;
  // Whole tenths, inward.
  const inward = Math.ceil((needed - reach.value) / 100_000) * 100_000;
  return inward > 0
    ? `Move the line of ${id} at least ${say(reach, inward)} towards the middle of the body, or take the contour out.`
    : `Make ${id} deeper, or move its line towards the middle of the body, or take it out.`;
}
