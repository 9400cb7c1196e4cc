/** The machined top over each cavity that is cut from the back: where it is lowest, and how thick the body is there. */
import type { Use } from '../../facts/facts.ts';
import { byDefinition } from '../../facts/facts.ts';
import { hole } from '../../facts/leaf.ts';
import { highestPoint } from '../../facts/parts.ts';
import { namesOf } from '../../facts/row.ts';
import type { Subject } from '../../facts/subject.ts';
import { intersection } from '../../geometry/offset.ts';
import { depthOn, heightOn } from '../../geometry/solid/face.ts';
import { lowestOver } from '../../geometry/solid/lowest.ts';
import type { Height } from '../../geometry/solid/profile.ts';
import type { Length } from '../../units/quantity.ts';
import { topAtHeight } from '../heights.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';

/** A place of the top. */
export interface TopPlace extends Height {
  readonly xMm: number;
  readonly yMm: number;
}

declare module '../../facts/facts.ts' {
  interface DerivedFacts {
    [id: `thickness.over.${string}`]: Length;
    [id: `place.over.${string}`]: TopPlace;
  }
}

const rule: Rule = (subject) =>
  namesOf(subject.spec.cavities).flatMap((id) => [
    derivation({
      id: `place.over.${id}`,
      label: `cavity ${id}: where the top is lowest over it`,
      formula: 'least height of the carved top over the outline of the cavity',
      source: byDefinition,
      value: (use) => lowestTop(use, id),
    }),
    derivation({
      id: `thickness.over.${id}`,
      label: `cavity ${id}: body where the top is lowest over it`,
      formula: 'height of the land and of the high point, each by its share there, less what is cut below that',
      source: byDefinition,
      value: (use) => thicknessOver(subject, use, id),
    }),
  ]);
export default rule;

function lowestTop(use: Use, id: string): TopPlace {
  const drawn = use.fact(`cavity.${id}.drawn`);
  const face = use.fact('face.top');
  if (!drawn.ok) return use(hole(`cavities.${id}.shape`));
  const inside = intersection([drawn.polygon], [use.fact('outline.polygon')]);
  // One that lies outside the body is another finding's business.
  const region = inside.length > 0 ? inside : [drawn.polygon];
  const lowest = lowestOver(region, (x, y) => -depthOn(face, x, y));
  if (!lowest) return use(hole(`cavities.${id}.shape`));
  const { xMm, yMm } = lowest;
  return { xMm, yMm, ...heightOn(face, xMm, yMm) };
}

/** A flat top has one height: no need to know where. */
function thicknessOver(subject: Subject, use: Use, id: string): Length {
  const { spec } = subject;
  const flat = use(spec.carve.kind) === 'flat' && namesOf(spec.contours).length === 0 && spec.edges === undefined;
  if (flat) return use.fact(`thickness.body.machined.${highestPoint(spec)}`);
  return topAtHeight(subject, use, use.fact(`place.over.${id}`));
}
