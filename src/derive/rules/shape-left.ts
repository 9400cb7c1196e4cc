/** What carve and contours do to a body: what each contour takes off, and what of the cap they leave. */
import type { Use } from '../../facts/facts.ts';
import { byDefinition, practice } from '../../facts/facts.ts';
import { partsOf } from '../../facts/parts.ts';
import { namesOf } from '../../facts/row.ts';
import type { Subject } from '../../facts/subject.ts';
import { forEachEdge } from '../../geometry/polygon.ts';
import type { Contour } from '../../geometry/solid/contour.ts';
import { awayFrom, contourDepth } from '../../geometry/solid/contour.ts';
import type { Face } from '../../geometry/solid/face.ts';
import { depthOn, heightOn, withoutEdge } from '../../geometry/solid/face.ts';
import { lowestOver } from '../../geometry/solid/lowest.ts';
import { subtract } from '../../units/arithmetic.ts';
import type { Length } from '../../units/quantity.ts';
import { topAtHeight } from '../heights.ts';
import { lengthOfMm } from '../lengths.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';

/** A length at a place of the body. */
export interface LengthAt {
  readonly length: Length;
  readonly xMm: number;
  readonly yMm: number;
}

export interface ContourTaken extends LengthAt {
  /** How far the body reaches out over the line it begins at; below nothing: how far it stays short of it. */
  readonly reach: Length;
}

declare module '../../facts/facts.ts' {
  interface DerivedFacts {
    /** At its deepest below what else shapes the face; nothing where it takes nothing off. */
    [id: `contour.${string}.taken`]: ContourTaken;
    /** Cap left in the white body where the carve lies lowest. */
    'carve.cap-left': LengthAt;
    /** The same under a contour of the top; nothing where it takes nothing off. */
    [id: `contour.${string}.cap-left`]: LengthAt | undefined;
  }
}

const white = practice(
  'height of the white top less that of the glue face, all of the sanding taken off the top; edges left out: what is rounded or cut there shows the back at the side all the same; tolerance graph, no source',
);

const rule: Rule = (subject) => [
  ...namesOf(subject.spec.contours).map((id) =>
    derivation({
      id: `contour.${id}.taken`,
      label: `contour ${id}: what it takes off at its deepest`,
      formula: 'greatest depth of its face with it less that without it, over the body',
      source: byDefinition,
      value: (use) => takenBy(subject, use, id),
    }),
  ),
  ...(partsOf(subject.spec).includes('cap')
    ? [
        derivation({
          id: 'carve.cap-left',
          label: 'cap left where the carve lies lowest',
          formula: 'white top as carved less the glue face',
          source: white,
          value: (use) => capLeft(subject, use, { ...withoutEdge(use.fact('face.top')), contours: [] })!,
        }),
        ...namesOf(subject.spec.contours).map((id) =>
          derivation({
            id: `contour.${id}.cap-left`,
            label: `contour ${id}: cap left where it lies lowest`,
            formula: 'white top with this contour less the glue face',
            source: white,
            value: (use) => capUnder(subject, use, id),
          }),
        ),
      ]
    : []),
];
export default rule;

function takenBy(subject: Subject, use: Use, id: string): ContourTaken {
  const face = use.fact(`face.${use(subject.spec.contours![id]!.face)}`);
  const own = contourOn(subject, use, id, face);
  const others = { ...face, contours: face.contours.filter((one) => one !== own) };
  const outline = use.fact('outline.polygon');
  const deepest = lowestOver([outline], (x, y) =>
    // Most of a body lies on the other side of its line.
    contourDepth(own, x, y) === 0 ? 0 : depthOn(others, x, y) - depthOn(face, x, y),
  )!;
  let reachMm = -Infinity;
  forEachEdge(outline, (x, y) => (reachMm = Math.max(reachMm, awayFrom(own, x, y))));
  const { xMm, yMm, value } = deepest;
  return { length: lengthOfMm(-value, 2), xMm, yMm, reach: lengthOfMm(reachMm, 1) };
}

/** Contours of a face stand in the order of the spec. */
function contourOn({ spec }: Subject, use: Use, id: string, face: Face): Contour {
  const side = use(spec.contours![id]!.face);
  const onFace = namesOf(spec.contours).filter((one) => use(spec.contours![one]!.face) === side);
  return face.contours[onFace.indexOf(id)]!;
}

function capUnder(subject: Subject, use: Use, id: string): LengthAt | undefined {
  if (use(subject.spec.contours![id]!.face) !== 'top') return undefined;
  const face = withoutEdge(use.fact('face.top'));
  const own = contourOn(subject, use, id, face);
  const carved = { ...face, contours: [] };
  // Where the carve lies lower than the contour, it is the carve that cuts.
  return capLeft(subject, use, { ...face, contours: [own] }, (x, y) => {
    const depth = contourDepth(own, x, y);
    return depth > 0 && depth > depthOn(carved, x, y);
  });
}

function capLeft(
  subject: Subject,
  use: Use,
  face: Face,
  cuts: (x: number, y: number) => boolean = () => true,
): LengthAt | undefined {
  const lowest = lowestOver([use.fact('outline.polygon')], (x, y) => (cuts(x, y) ? -depthOn(face, x, y) : Infinity));
  if (!lowest) return undefined;
  const { xMm, yMm } = lowest;
  const top = topAtHeight(subject, use, heightOn(face, xMm, yMm), 'white');
  return { length: subtract(top, use.fact('glue.height')), xMm, yMm };
}
