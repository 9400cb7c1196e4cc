/** Wood left along the edge between what is cut into both faces there: under a ledge, and between two rounds. */
import type { Use } from '../../facts/facts.ts';
import { practice } from '../../facts/facts.ts';
import { highestPoint } from '../../facts/parts.ts';
import type { Subject } from '../../facts/subject.ts';
import { difference, offset } from '../../geometry/offset.ts';
import { depthOn, heightOn } from '../../geometry/solid/face.ts';
import { lowestOver } from '../../geometry/solid/lowest.ts';
import { mergedCauses, scaledCauses, withCauses } from '../../units/arithmetic.ts';
import type { Cause } from '../../units/quantity.ts';
import { topAtHeight } from '../heights.ts';
import { toMm } from '../lengths.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';
import type { LengthAt } from './shape-left.ts';

type Side = 'top' | 'back';

declare module '../../facts/facts.ts' {
  interface DerivedFacts extends Record<`edge.under-ledge.${Side}`, LengthAt> {
    'edge.between-rounds': LengthAt;
  }
}

const SIDES: readonly Side[] = ['top', 'back'];

const stack = practice('height of the body there less what is cut into either face; tolerance graph, no source');

const rule: Rule = (subject) => {
  const edges = subject.spec.edges;
  return [
    ...SIDES.filter((side) => edges?.[side]?.ledge).map((side) =>
      derivation({
        id: `edge.under-ledge.${side}`,
        label: `wood between the ledge of the ${side} and the other face`,
        formula: 'least height over the ledge',
        source: stack,
        value: (use) => leftWithin(subject, use, toMm(use(edges![side]!.ledge!.width))),
      }),
    ),
    ...(edges?.top?.round && edges.back?.round
      ? [
          derivation({
            id: 'edge.between-rounds',
            label: 'edge left upright between the rounds of top and back',
            formula: 'least height at the edge less both radii',
            source: stack,
            value: (use) => leftWithin(subject, use, EDGE_MM),
          }),
        ]
      : []),
  ];
};
export default rule;

/** A round is deepest at the edge itself: so wide a strip has that in it, mm. */
const EDGE_MM = 0.05;

function leftWithin(subject: Subject, use: Use, widthMm: number): LengthAt {
  const [top, back] = [use.fact('face.top'), use.fact('face.back')];
  const outline = [use.fact('outline.polygon')];
  const heightMm = toMm(use.fact(`thickness.body.machined.${highestPoint(subject.spec)}`));
  // A hair within its line: on that itself the ledge has ended.
  const strip = difference(outline, offset(outline, -widthMm * (1 - HAIR)));
  const { xMm, yMm } = lowestOver(strip, (x, y) => heightMm - depthOn(top, x, y) - depthOn(back, x, y))!;
  const { share, dropMm } = heightOn(top, xMm, yMm);
  const left = topAtHeight(subject, use, { share, dropMm: dropMm + depthOn(back, xMm, yMm) });
  const length = withCauses(left, mergedCauses([...(left.causes ?? []), ...edgeCauses(subject, use)]));
  return { length, xMm, yMm };
}

const HAIR = 1e-6;

/** A ledge cut deeper, or a greater round, within limits of its own. */
function edgeCauses({ spec }: Subject, use: Use): readonly Cause[] {
  return SIDES.flatMap((side) => {
    const own = spec.edges?.[side];
    const cut = own?.ledge?.depth ?? own?.round;
    return cut ? scaledCauses(use(cut).causes ?? [], -1) : [];
  });
}
