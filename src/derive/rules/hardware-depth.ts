/** How deep a part finds its hole or cavity once the body is white, and what room is left between its end and the cover. */
import type { Cut } from '../../facts/cuts.ts';
import { cutId } from '../../facts/cuts.ts';
import type { Use } from '../../facts/facts.ts';
import { practice } from '../../facts/facts.ts';
import { fittedId, insideOf } from '../../facts/fitted.ts';
import type { Fitted, FittedId } from '../../facts/fitted.ts';
import { wanted } from '../../facts/row.ts';
import type { Subject } from '../../facts/subject.ts';
import { intersection } from '../../geometry/offset.ts';
import type { Region } from '../../geometry/polygon.ts';
import { depthOn, heightOn } from '../../geometry/solid/face.ts';
import type { Lowest } from '../../geometry/solid/lowest.ts';
import { lowestOver } from '../../geometry/solid/lowest.ts';
import type { Pocket } from '../../geometry/solid/solid.ts';
import { floorAt } from '../../geometry/solid/solid.ts';
import { mergedCauses, scaledCauses, subtract, withCauses } from '../../units/arithmetic.ts';
import type { Length } from '../../units/quantity.ts';
import { cavityOf, cutOf, hardwareRow, seatOver } from '../cavity-of.ts';
import { topAtHeight } from '../heights.ts';
import { lengthOfMm } from '../lengths.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';
import { causesUpright } from '../wood.ts';

declare module '../../facts/facts.ts' {
  interface DerivedFacts {
    /** Nothing of what lies on a face. */
    [id: `fitted.${FittedId}.depth.${'least' | 'most'}`]: Length | undefined;
    /** Between the end of what is behind the panel and the inside of the cover; nothing where the row has no reach. */
    [id: `fitted.hole.${string}.to-cover`]: Length | undefined;
  }
}

const rule: Rule = (subject) =>
  insideOf(subject.spec).flatMap((fitted) => {
    const id = fittedId(fitted);
    const name = `part at ${fitted.kind} ${fitted.id}`;
    return [
      ...(['least', 'most'] as const).map((which) =>
        derivation({
          id: `fitted.${id}.depth.${which}`,
          label: `${name}: depth it finds, at the ${which}`,
          formula:
            'from the white top down to the floor; on the back, from the back or from the seat of the cover over it',
          source: practice('tolerance graph, no source'),
          value: (use) => depth(subject, use, fitted, which),
        }),
      ),
      ...(fitted.kind === 'hole'
        ? [
            derivation({
              id: `fitted.hole.${fitted.id}.to-cover`,
              label: `${name}: room between its end and the cover`,
              formula: 'floor of the cavity over the seat of its cover, or over the back, less its reach',
              source: practice('tolerance graph, no source'),
              value: (use) => toCover(subject, use, fitted),
            }),
          ]
        : []),
    ];
  });
export default rule;

function depth(subject: Subject, use: Use, fitted: Fitted, which: 'least' | 'most'): Length | undefined {
  const cut = cutOf(subject, use, fitted);
  const own = cut && use.fact(`${cutId(cut)}.void`);
  if (own?.kind !== 'pocket') return undefined;
  if (own.opens === 'top') return belowTop(subject, use, cut!, { own, over: own.region, which });
  if (own.opens === 'back') return insideBack(subject, use, cut!, { own, over: own.region, which });
  return undefined;
}

interface Looked {
  readonly own: Pocket;
  /** Where it counts. */
  readonly over: Region;
  readonly which: 'least' | 'most';
}

/** What of a cavity the part lies over; all of it where that cannot be said. */
function bodyIn(use: Use, fitted: Fitted, own: Pocket): Region {
  const body = use.fact(`fitted.${fittedId(fitted)}.body`);
  const inside = body ? intersection(body, own.region) : [];
  return inside.length > 0 ? inside : own.region;
}

/** The white top over the back, less the wood below the floor. */
function belowTop(subject: Subject, use: Use, cut: Cut, { own, over, which }: Looked): Length | undefined {
  const face = use.fact('face.top');
  const sign = which === 'least' ? 1 : -1;
  const found = lowestOver(over, (x, y) => sign * (-depthOn(face, x, y) - floorAt(own.floor, y)));
  if (!found) return undefined;
  const { xMm, yMm } = found;
  const top = topAtHeight(subject, use, heightOn(face, xMm, yMm), 'white');
  const under = withCauses(
    lengthOfMm(floorAt(own.floor, yMm), 2),
    causesUpright(subject, use, 'back', { cut }, leftAt(found)),
  );
  return { ...subtract(top, under), decimals: 2 };
}

/** The floor over the inside of the cover, or over the back. */
function insideBack(subject: Subject, use: Use, cut: Cut, { own, over, which }: Looked): Length | undefined {
  const seat = cut.kind === 'cavity' ? seatOver(subject, use, cut) : undefined;
  const below = seat && use.fact(`cavity.${seat.id}.void`);
  const sign = which === 'least' ? 1 : -1;
  const height = (y: number) => floorAt(own.floor, y) - (below?.kind === 'pocket' ? floorAt(below.floor, y) : 0);
  const found = lowestOver(over, (_, y) => sign * height(y));
  if (!found) return undefined;
  const causes = causesUpright(subject, use, seat ? { cut: seat } : 'back', { cut }, leftAt(found));
  return withCauses(lengthOfMm(height(found.yMm), 2), causes);
}

const leftAt = ({ xMm, yMm }: Lowest) => ({ mm: 0, xMm, yMm, through: 'floor', sharedMm2: 0, up: 1 }) as const;

function toCover(subject: Subject, use: Use, fitted: Fitted): Length | undefined {
  const { reach } = hardwareRow(subject, use, fitted);
  const cavity = cavityOf(subject, use, fitted);
  const own = cavity && use.fact(`${cutId(cavity)}.void`);
  if (!reach || own?.kind !== 'pocket' || own.opens !== 'back') return undefined;
  const inside = insideBack(subject, use, cavity!, { own, over: bodyIn(use, fitted, own), which: 'least' });
  const needed = use(wanted(reach, 'plant.hardware.reach'));
  return (
    inside &&
    withCauses(
      { ...inside, value: inside.value - needed.value },
      mergedCauses([...(inside.causes ?? []), ...scaledCauses(needed.causes ?? [], -1)]),
    )
  );
}
