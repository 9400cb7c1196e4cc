/** The body between its two faces, where no cavity is: thinnest where contours, bevel or arch of both come together. */
import { practice } from '../../facts/facts.ts';
import type { Use } from '../../facts/facts.ts';
import type { Subject } from '../../facts/subject.ts';
import type { Face } from '../../geometry/solid/face.ts';
import { depthOn, heightOn, withoutEdge } from '../../geometry/solid/face.ts';
import type { Lowest } from '../../geometry/solid/lowest.ts';
import { lowestOver } from '../../geometry/solid/lowest.ts';
import { offset } from '../../geometry/offset.ts';
import type { Polygon } from '../../geometry/polygon.ts';
import type { Left } from '../../geometry/solid/wood-left.ts';
import { topAtHeight } from '../heights.ts';
import { toMm } from '../lengths.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';
import { highestPoint } from '../../facts/parts.ts';
import type { Length } from '../../units/quantity.ts';

export interface BodyLeft {
  readonly left: Left;
  readonly wood: Length;
}

declare module '../../facts/facts.ts' {
  interface DerivedFacts {
    'body.between-faces': BodyLeft | undefined;
  }
}

const rule: Rule = (subject) => [
  derivation({
    id: 'body.between-faces',
    label: 'body between its faces, where it is thinnest',
    formula: 'height of the top less that of the back, rounded edges and ledges left out',
    source: practice('what is rounded at an edge is meant to be thin; common practice, no source'),
    value: (use) => thinnest(subject, use),
  }),
];
export default rule;

function thinnest(subject: Subject, use: Use): BodyLeft | undefined {
  const [top, back] = [withoutEdge(use.fact('face.top')), withoutEdge(use.fact('face.back'))];
  const heightMm = toMm(use.fact(`thickness.body.machined.${highestPoint(subject.spec)}`));
  const left = (x: number, y: number): number => heightMm - depthOn(top, x, y) - depthOn(back, x, y);
  const outline = use.fact('outline.polygon');
  const shaped = top.contours.length + back.contours.length > 0;
  const found = shaped ? lowestOver([outline], left) : alongEnds(outline, top, left);
  if (!found) return undefined;
  const { xMm, yMm } = found;
  const { share, dropMm } = heightOn(top, xMm, yMm);
  const wood = topAtHeight(subject, use, { share, dropMm: dropMm + depthOn(back, xMm, yMm) });
  return { left: { mm: found.value, xMm, yMm, through: 'floor', sharedMm2: 0, up: 1 }, wood };
}

/** With no contour each piece of the carve is lowest at one of its ends: on the edge, or at a distance from it. */
function alongEnds(outline: Polygon, top: Face, left: (x: number, y: number) => number): Lowest | undefined {
  const places = [0, ...top.carve.profile.pieces.map(({ toMm: away }) => away)].flatMap((away) => {
    const line = away === 0 ? outline : offset([outline], -away)[0];
    return line ? [{ xMm: line[0]!, yMm: line[1]!, value: left(line[0]!, line[1]!) }] : [];
  });
  return places.toSorted((a, b) => a.value - b.value)[0];
}
