/** How a plate lies on its face: how far inside the edge of the body, and what air is under it. */
import type { Use } from '../../facts/facts.ts';
import { practice } from '../../facts/facts.ts';
import { hole } from '../../facts/leaf.ts';
import type { SetupId } from '../../facts/cutting-order.ts';
import { namesOf } from '../../facts/row.ts';
import type { Subject } from '../../facts/subject.ts';
import { clearBetween, roomInside } from '../../geometry/inside.ts';
import { difference, intersection, offset } from '../../geometry/offset.ts';
import type { Polygon, Region } from '../../geometry/polygon.ts';
import type { AirUnder } from '../../geometry/solid/air-under.ts';
import { airUnder } from '../../geometry/solid/air-under.ts';
import { worstCase, withCauses } from '../../units/arithmetic.ts';
import type { Length } from '../../units/quantity.ts';
import { lengthOfMm } from '../lengths.ts';
import type { Side } from '../location.ts';
import { apartCauses, perimetersOf, worstOf } from '../location.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';

export interface CoverRoom {
  /** To the edge, or to another plate; below zero: how far it stands out, or lies on that. */
  readonly room: Length;
  /** Where that is. */
  readonly xMm: number;
  readonly yMm: number;
}

export interface CoverAir extends AirUnder {
  readonly air: Length;
}

declare module '../../facts/facts.ts' {
  interface DerivedFacts {
    [id: `cover.${string}.to-edge`]: CoverRoom;
    /** To another plate, a later one of the spec; nothing where that lies on the other face. */
    [id: `cover.${string}.beside.${string}`]: CoverRoom | undefined;
    /** At worst: as far off sideways as its screws may be. Nothing where no wood lies under it. */
    [id: `cover.${string}.air`]: CoverAir | undefined;
  }
}

const rule: Rule = (subject) =>
  namesOf(subject.spec.covers).flatMap((id, i, names) => [
    derivation({
      id: `cover.${id}.to-edge`,
      label: `cover ${id}: how far it lies inside the edge of the body`,
      formula: 'least distance of its edge from the outline; off as its screws are against the perimeter',
      source: practice('a plate lies where its screws are; common practice, no source'),
      value: (use) => toEdge(subject, use, id),
    }),
    derivation({
      id: `cover.${id}.air`,
      label: `cover ${id}: air under it, at worst`,
      formula: 'face under it, where it is lowest, below what the plate rests on',
      source: practice('a plate is flat, and rests on what stands highest under it; common practice, no source'),
      value: (use) => airOf(subject, use, id),
    }),
    ...names.slice(i + 1).map((other) =>
      derivation({
        id: `cover.${id}.beside.${other}`,
        label: `covers ${id} and ${other}: how far apart they lie`,
        formula: 'least distance of their edges; each off as its screws are',
        source: practice('a plate lies where its screws are; common practice, no source'),
        value: (use) => beside(subject, use, id, other),
      }),
    ),
  ]);
export default rule;

function polygonOf(use: Use, id: string): Polygon {
  const drawn = use.fact(`cover.${id}.drawn`);
  return drawn.ok ? drawn.polygon : use(hole(`covers.${id}.shape`));
}

/** What it is screwed to is drilled in the set-up that has its face up. */
const screwsOf = (face: 'top' | 'back', id: string): Side => ({ setup: face satisfies SetupId, cut: `cover.${id}` });

const faceOf = ({ spec }: Subject, use: Use, id: string) => use(spec.covers![id]!.face);

function toEdge(subject: Subject, use: Use, id: string): CoverRoom {
  const { mm, at } = roomInside([polygonOf(use, id)], [use.fact('outline.polygon')]);
  const place = { xMm: at.x, yMm: at.y };
  const own = screwsOf(faceOf(subject, use, id), id);
  const cutting = perimetersOf(subject);
  const causes = worstOf(cutting.map((perimeter) => apartCauses(subject, use, own, perimeter, place)));
  return { room: withCauses(lengthOfMm(mm, 2), causes), ...place };
}

function beside(subject: Subject, use: Use, id: string, other: string): CoverRoom | undefined {
  const side = faceOf(subject, use, id);
  if (faceOf(subject, use, other) !== side) return undefined;
  const { mm, at } = clearBetween([polygonOf(use, id)], [polygonOf(use, other)]);
  const place = { xMm: at.x, yMm: at.y };
  const causes = apartCauses(subject, use, screwsOf(side, id), screwsOf(side, other), place);
  return { room: withCauses(lengthOfMm(mm, 2), causes), ...place };
}

function airOf(subject: Subject, use: Use, id: string): CoverAir | undefined {
  const side = faceOf(subject, use, id);
  const polygon = polygonOf(use, id);
  const own = screwsOf(side, id);
  const off = worstCase(
    apartCauses(subject, use, own, { setup: side, cut: `shape.${side}` }, { xMm: polygon[0]!, yMm: polygon[1]! }),
  ).plus;
  const wood = (plate: Region): Region =>
    difference(intersection(plate, [use.fact('outline.polygon')]), mouthsIn(subject, use, side));
  const found = airUnder(use.fact(`face.${side}`), wood([polygon]), wood(offset([polygon], off / 1e6)));
  return found && { ...found, air: lengthOfMm(found.mm, 2) };
}

/** Nothing lies on what is cut away. A hole is no wider than what is left round it: the face beside it says the same. */
function mouthsIn({ spec }: Subject, use: Use, side: 'top' | 'back'): Region {
  return namesOf(spec.cavities).flatMap((id) => {
    const own = use.fact(`cavity.${id}.void`);
    return own.kind === 'pocket' && own.opens === side ? own.region : [];
  });
}
