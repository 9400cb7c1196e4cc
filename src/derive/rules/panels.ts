/** The wood that hardware is mounted through: under its washer, from the floor of the cavity below to the top. */
import type { Use } from '../../facts/facts.ts';
import { byDefinition } from '../../facts/facts.ts';
import { namesOf, row } from '../../facts/row.ts';
import type { Subject } from '../../facts/subject.ts';
import { highestPoint } from '../../facts/parts.ts';
import { intersection } from '../../geometry/offset.ts';
import { shapePolygon } from '../../geometry/shape.ts';
import { depthOn } from '../../geometry/solid/face.ts';
import { lowestOver } from '../../geometry/solid/lowest.ts';
import { floorAt } from '../../geometry/solid/solid.ts';
import { withCauses } from '../../units/arithmetic.ts';
import type { Length } from '../../units/quantity.ts';
import { lengthOfMm, toMm } from '../lengths.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';
import { causesUpright } from '../wood.ts';
import { cavityUnder } from '../cavity-of.ts';

declare module '../../facts/facts.ts' {
  interface DerivedFacts {
    /** Nothing where it meets no wood over a cavity, or is mounted through none. */
    [id: `panel.${string}.${'least' | 'most'}`]: Length | undefined;
  }
}

const rule: Rule = (subject) =>
  namesOf(subject.spec.holes)
    .filter((id) => subject.spec.holes![id]!.hardware !== undefined)
    .flatMap((id) =>
      (['least', 'most'] as const).map((which) =>
        derivation({
          id: `panel.${id}.${which}`,
          label: `hole ${id}: wood under its hardware, at the ${which}`,
          formula: 'height of the top less that of the cavity’s floor, over the washer',
          source: byDefinition,
          value: (use) => panel(subject, use, id, which),
        }),
      ),
    );
export default rule;

function panel(subject: Subject, use: Use, id: string, which: 'least' | 'most'): Length | undefined {
  const { spec, plant } = subject;
  const part = row(plant.hardware, use(spec.holes![id]!.hardware!), 'plant.hardware');
  // What stands in its hole, and not in a panel, asks nothing of one.
  if (!part.panel) return undefined;
  const cavity = cavityUnder(subject, use, id);
  if (!cavity) return undefined;
  const below = use.fact(`cavity.${cavity.id}.void`);
  if (below.kind !== 'pocket' || below.opens !== 'back') return undefined;
  const spot = use.fact(`hole.${id}.spot`);
  const diameterMm = part.washer ? toMm(use(part.washer)) : spot.diameterMm;
  const disc = shapePolygon({ kind: 'circle', diameterMm }, spot);
  const face = use.fact('face.top');
  const heightMm = toMm(use.fact(`thickness.body.machined.${highestPoint(spec)}`));
  const sign = which === 'least' ? 1 : -1;
  const found = lowestOver(
    disc.ok ? intersection([disc.polygon], below.region) : [],
    (x, y) => sign * (heightMm - depthOn(face, x, y) - floorAt(below.floor, y)),
  );
  if (!found) return undefined;
  const { xMm, yMm, value } = found;
  const left = { mm: sign * value, xMm, yMm, through: 'floor', sharedMm2: 0, up: 1 } as const;
  return withCauses(lengthOfMm(left.mm, 2), causesUpright(subject, use, { cut: cavity }, 'top', left));
}
