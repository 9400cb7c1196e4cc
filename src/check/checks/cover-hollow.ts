/** A cover lies on wood all over: no contour, round or carve has taken it away under its edge. */
import { namesOf } from '../../facts/row.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { say, sayPoint } from '../say.ts';
import type { Shaping } from '../shaped.ts';
import { shapedAt } from '../shaped.ts';
import type { Length } from '../../units/quantity.ts';
import { carve, cut, cuts, EDGE, plate, ring, section, slab } from '../sketch.ts';

/** A gap that is seen along the edge of a plate, nm. Common practice, no source. */
const SEEN_NM = 100_000;

const check: Check = {
  id: 'cover-hollow',
  stage: 'derived',
  severity: 'error',
  why: 'There is air under the edge of the plate: it is bent down by its screws or stands open, and shows.',
  mend: 'Let the contour or round begin outside the cover, or move the cover to where the face is flat.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'crown: { from: 95 } }\n',
    fails:
      'crown: { from: 95 } }\ncontours: { belly: { face: back, kind: plane, from: { x: -30, y: 60 }, to: { x: -30, y: -20 }, slope: 4 deg, cutter: ball-20 } }\n',
  },
  sketch: section(
    slab({ right: EDGE }),
    cuts(cut({ from: 12, to: 30, depth: 10 }), carve(34, 'C 42 0 48 5 56 6')),
    plate(8, 50),
    ring(46, 1.4, 3.2, 'lower-left'),
  ),
  run: (bench) => namesOf(bench.subject.spec.covers).flatMap((id) => fault(bench, id)),
};
export default check;

function fault(bench: Bench, id: string): Fault[] {
  const { at, shape, face } = bench.subject.spec.covers![id]!;
  const seen = look(bench.facts, (use) => ({
    side: use(face),
    under: use.fact(`cover.${id}.air`),
    room: use.fact(`cover.${id}.to-edge`).room,
  }));
  if (!seen?.under || seen.under.air.value <= SEEN_NM) return [];
  const { side, under, room } = seen;
  const shaping = shapedAt(bench, side, under.xMm, under.yMm).toReversed();
  const [own] = shaping;
  // Over the edge it lies over the round as well: one mistake.
  if (own?.by === 'edge' && (room.low ?? room.value) < 0) return [];
  const size = shape.length ?? shape.diameter;
  // A plate on a carved top is at fault itself: the carve is the model.
  const to = own && own.by !== 'carve' ? own.at : at.x.id;
  return [
    {
      at: to,
      what: `Under the cover ${id} there is a gap of ${say(under.air, under.air.value)} at worst, at ${sayPoint({ x: under.xMm, y: under.yMm }, bench.subject.hand)}: the ${side} is not flat there. A gap of more than ${say(under.air, SEEN_NM)} shows.`,
      mend: mendOf(under.air, own),
      against: [
        { at: at.x.id, text: 'where the cover lies' },
        ...(size ? [{ at: size.id, text: 'how large the cover is' }] : []),
        ...shaping.map(({ at: line, text }) => ({ at: line, text })),
      ].filter((note) => note.at !== to),
      hangsOn: [`cover.${id}.air`],
    },
  ];
}

function mendOf(air: Length, own: Shaping | undefined): string {
  if (own?.overMm === undefined) return 'Move the cover to where the face is flat, or make it smaller.';
  // Whole tenths, outward: what is left is less than is seen.
  const away = say({ ...air, decimals: 1 }, Math.ceil(own.overMm * 10) * 100_000);
  return own.by === 'contour'
    ? `Let the contour begin ${away} further out, or bring the edge of the cover ${away} inward there.`
    : `Bring the edge of the cover ${away} inward there, or cut less off the edge of the body.`;
}
