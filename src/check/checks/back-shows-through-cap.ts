/** Carve and contours leave the cap all over, unless they are meant to come through it. */
import type { DerivedFacts } from '../../facts/facts.ts';
import type { Leaf } from '../../facts/leaf.ts';
import { highestPoint, partsOf, pointsOf } from '../../facts/parts.ts';
import { namesOf } from '../../facts/row.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { capital, drawnAndWorst, say, sayPoint } from '../say.ts';
import { EDGE, carve, cuts, ring, section, slab } from '../sketch.ts';

const check: Check = {
  id: 'back-shows-through-cap',
  stage: 'derived',
  severity: 'error',
  why: 'The glue line comes out in the face, and the wood of the back shows where the cap should be: under a clear finish for good.',
  mend: 'Make the cap thicker or cut less deep, or say with `cap: through` that it is meant.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'crown: 49.60 ±0.12, land: 45.40 ±0.12 }\n    white: { crown: 49.20 ±0.15, land: 45.00 ±0.15 }',
    fails: 'crown: 49.60 ±0.12, land: 34.80 ±0.12 }\n    white: { crown: 49.20 ±0.15, land: 34.40 ±0.15 }',
  },
  sketch: section(slab({ glue: 6, right: EDGE }), cuts(carve(16, 'C 32 0 36 10 56 10')), ring(37, 6, 3.2)),
  run: (bench) => {
    const { spec } = bench.subject;
    const land = pointsOf(spec, 'machined').includes('land') ? 'land' : highestPoint(spec);
    const carve: Shape = {
      name: 'the carve',
      at: `thickness.body.machined.${land}`,
      line: spec.carve.kind.id,
      fact: 'carve.cap-left',
      cap: spec.carve.cap,
    };
    const contours = namesOf(spec.contours).map((id): Shape => {
      const { slope, depth, kind, cap } = spec.contours![id]!;
      const line = kind.id;
      return { name: `contour ${id}`, at: (slope ?? depth)?.id ?? line, line, fact: `contour.${id}.cap-left`, cap };
    });
    return [carve, ...contours].flatMap((shape) =>
      partsOf(spec).includes('cap') ? fault(bench, shape) : withoutCap(shape),
    );
  },
};
export default check;

interface Shape {
  readonly name: string;
  readonly at: string;
  readonly line: string;
  readonly fact: 'carve.cap-left' | `contour.${string}.cap-left`;
  /** Where it is said that it is meant. */
  readonly cap: Leaf<string> | undefined;
}

function withoutCap({ name, line, cap }: Shape): Fault[] {
  if (!cap) return [];
  return [
    {
      at: cap.id,
      what: `${capital(name)} is said to come through the cap, and the body is made of one slab: it has none.`,
      mend: 'Take `cap` out here, or give the body a cap.',
      against: [{ at: line, text: `what kind of cut ${name} is` }],
    },
  ];
}

function fault({ subject, facts }: Bench, shape: Shape): Fault[] {
  const seen = look(facts, (use) => ({ left: use.fact(shape.fact), glue: use.fact('glue.height') }));
  if (!seen) return [];
  const { left } = seen;
  const worst = left && (left.length.low ?? left.length.value);
  if (shape.cap) return left && worst! <= 0 ? [] : [notThrough(shape, shape.cap, left)];
  if (!left || worst! > 0) return [];
  const { length, xMm, yMm } = left;
  const ends = drawnAndWorst(
    length,
    (size, past) => `${size} ${past ? 'below' : 'above'} the glue line`,
    `, at ${sayPoint({ x: xMm, y: yMm }, subject.hand)}, once the body is sanded white`,
  );
  return [
    {
      at: shape.at,
      what: `${capital(shape.name)} ends ${ends}. The wood of the back shows there.`,
      mend: `Make the cap more than ${say(length, -worst!)} thicker, or cut that much less deep; or say with \`cap: through\` that the back is meant to show.`,
      against: [
        { at: 'thickness.part.cap.sized', text: 'how thick the cap is' },
        { at: shape.line, text: `what kind of cut ${shape.name} is` },
      ],
      hangsOn: [shape.fact],
    },
  ];
}

function notThrough(
  { name, line, fact }: Shape,
  cap: Leaf<string>,
  left: DerivedFacts['carve.cap-left'] | undefined,
): Fault {
  const kept = left ? `leaves ${say(left.length, left.length.value)} of it where it lies lowest` : 'cuts none of it';
  return {
    at: cap.id,
    what: `${capital(name)} is said to come through the cap, and ${kept}.`,
    mend: 'Take `cap` out here, or cut deeper.',
    against: [{ at: line, text: `what kind of cut ${name} is` }],
    hangsOn: [fact],
  };
}
