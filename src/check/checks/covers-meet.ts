/** No two plates of one face lie on each other, at worst. */
import { namesOf } from '../../facts/row.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { drawnAndWorst, say, sayPoint } from '../say.ts';
import { cut, cuts, plate, ring, section, shape, slab } from '../sketch.ts';

const check: Check = {
  id: 'covers-meet',
  stage: 'derived',
  severity: 'error',
  why: 'The second plate does not lie down: it stands on the first, and is bent or filed at assembly.',
  mend: 'Move one of the two, or make it smaller.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'shape: { kind: rectangle, length: 42, width: 68 }, at: { x: 0, y: 44 }',
    fails: 'shape: { kind: rectangle, length: 242, width: 68 }, at: { x: 0, y: 44 }',
  },
  sketch: section(
    slab(),
    cuts(cut({ from: 10, to: 24, depth: 8 }), cut({ from: 36, to: 50, depth: 8 })),
    plate(6, 34),
    shape('M 29 -1.6 L 55 -0.2 V -1.6 L 29 -3.2 Z', 'metal', 'edge'),
    ring(31.5, -1.8, 3),
  ),
  run: (bench) => {
    const names = namesOf(bench.subject.spec.covers);
    return names.flatMap((a, i) => names.slice(i + 1).flatMap((b) => fault(bench, a, b)));
  },
};
export default check;

function fault({ subject: { spec, hand }, facts }: Bench, a: string, b: string): Fault[] {
  const fact = `cover.${a}.beside.${b}` as const;
  const found = look(facts, (use) => use.fact(fact));
  if (!found) return [];
  const { room, xMm, yMm } = found;
  const worst = room.low ?? room.value;
  if (worst >= 0) return [];
  const { shape, at, face } = spec.covers![a]!;
  const other = spec.covers![b]!;
  const [size, otherSize] = [shape.length ?? shape.diameter, other.shape.length ?? other.shape.diameter];
  const side = look(facts, (use) => use(face));
  const lie = drawnAndWorst(
    room,
    (size, past) => `${size} ${past ? 'over each other' : 'apart'}`,
    `, at ${sayPoint({ x: xMm, y: yMm }, hand)} of the ${side}`,
  );
  return [
    {
      at: size?.id ?? at.x.id,
      what: `The covers ${a} and ${b} lie ${lie}.`,
      mend: `Move one of the two ${say(room, -worst)} away, or make it smaller, so that its edge comes in by as much.`,
      against: [
        { at: at.x.id, text: `where ${a} lies` },
        { at: other.at.x.id, text: `where ${b} lies` },
        ...(otherSize ? [{ at: otherSize.id, text: `how large ${b} is` }] : []),
      ],
      hangsOn: [fact],
    },
  ];
}
