/** Covers lie inside the edge of the body, at worst. */
import { namesOf } from '../../facts/row.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { drawnAndWorst, say, sayPoint } from '../say.ts';
import { line, outline, outlinePath, plan, rect, ring, shape } from '../sketch.ts';

const check: Check = {
  id: 'cover-off-the-body',
  stage: 'derived',
  severity: 'error',
  why: 'A plate that stands out over the edge catches on cloth and hand, bends up, and its screws work loose.',
  mend: 'Make the cover smaller, or move it inward.',
  example: {
    file: 'models/base/bolt-on.yaml',
    passes: 'shape: { kind: rectangle, length: 52, width: 64 }',
    fails: 'shape: { kind: rectangle, length: 100, width: 64 }',
  },
  sketch: plan(
    outline(),
    shape(rect(-16, 2, 0, 15, 2), 'metal', 'edge'),
    line(outlinePath(), 'hidden'),
    line(rect(-13, 4, -3, 9.6, 1), 'hidden'),
    ring(-2, 13, 3),
  ),
  run: (bench) => namesOf(bench.subject.spec.covers).flatMap((id) => fault(bench, id)),
};
export default check;

function fault({ subject: { spec, hand }, facts }: Bench, id: string): Fault[] {
  const { at, shape, face } = spec.covers![id]!;
  const seen = look(facts, (use) => {
    const side = use(face);
    const round = spec.edges?.[side]?.round;
    return { edge: use.fact(`cover.${id}.to-edge`), side, round: round && { at: round.id, wide: use(round) } };
  });
  if (!seen) return [];
  const { edge, side, round } = seen;
  const { room, xMm, yMm } = edge;
  const worst = room.low ?? room.value;
  if (worst >= 0) return [];
  const lies = drawnAndWorst(
    room,
    (size, past) => `${size} ${past ? 'outside' : 'inside'} the edge of the body`,
    `, at ${sayPoint({ x: xMm, y: yMm }, hand)} of the ${side}`,
  );
  const inward = round ? round.wide.value - worst : -worst;
  const clear = round ? `, which brings it off the round of ${say(round.wide, round.wide.value)}` : '';
  const size = shape.length ?? shape.diameter;
  return [
    {
      at: size?.id ?? at.x.id,
      what: `The edge of the cover ${id} lies ${lies}.`,
      mend: `Let its edge lie ${say(room, inward)} further in there${clear}: make it smaller, or move it.`,
      against: [
        { at: at.x.id, text: 'where the cover lies' },
        { at: 'outline.path', text: 'the outline' },
        ...(round ? [{ at: round.at, text: 'the round of the edge of the body' }] : []),
      ],
      hangsOn: [`cover.${id}.to-edge`],
    },
  ];
}
