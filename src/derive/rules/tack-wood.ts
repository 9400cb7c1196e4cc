/**
 * Tacks as they stand in the wood, and what is left round those inside the outline: to both faces, to the side and to every
 * cut. A tack is a round bar as wide as it is and as far off its mark as it may stand.
 */
import type { Use } from '../../facts/facts.ts';
import { byDefinition, practice } from '../../facts/facts.ts';
import type { Cut } from '../../facts/cuts.ts';
import { cutId, cutsOf } from '../../facts/cuts.ts';
import type { SetupId } from '../../facts/cutting-order.ts';
import { namesOf } from '../../facts/row.ts';
import type { Subject } from '../../facts/subject.ts';
import type { Tube } from '../../geometry/solid/solid.ts';
import { leftBetween, leftToFace, leftToSide } from '../../geometry/solid/wood-left.ts';
import { add, least, mergedCauses, most, scaledCauses, subtract } from '../../units/arithmetic.ts';
import type { Length } from '../../units/quantity.ts';
import { toMm } from '../lengths.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';
import type { SurfaceId } from '../surfaces.ts';
import { placeError, surfaceHeight } from '../surfaces.ts';
import { hasJoint, kindOf, tackIds } from '../tacks.ts';
import { causesUpright, placeCauses } from '../wood.ts';
import type { Wood } from './wood-left.ts';
import { isBelow, woodOf } from './wood-left.ts';

declare module '../../facts/facts.ts' {
  interface DerivedFacts {
    [id: `tack.${string}.bar`]: Tube;
    /** How deep it holds in the part it is driven into, at the thickest and with the shortest tack; of a pin, in the back. */
    [id: `tack.${string}.holds`]: Length;
    /** Wood before its point, at the thinnest and with the longest tack; below nothing where it comes out. */
    [id: `tack.${string}.before-point`]: Length;
    /** Of those inside the outline; nothing of one in the waste. */
    [id: `tack.${string}.left`]: readonly Wood[];
  }
}

const rule: Rule = (subject) => {
  if (!hasJoint(subject)) return [];
  return tackIds(subject).flatMap((id) => [
    derivation({
      id: `tack.${id}.bar`,
      label: `tack ${id}: as it stands in the wood`,
      formula: 'from the face it is driven from, by its length; of a pin, out of the glue face by its bite',
      source: byDefinition,
      value: (use) => bar(subject, use, id),
    }),
    derivation({
      id: `tack.${id}.holds`,
      label: `tack ${id}: how deep it holds`,
      formula: 'length − thickness of the part it is driven through and the glue line; of a pin, length − bite',
      source: byDefinition,
      value: (use) => holds(subject, use, id),
    }),
    derivation({
      id: `tack.${id}.before-point`,
      label: `tack ${id}: wood before its point`,
      formula: 'cap, glue line and back less its length; of a pin, the lesser of cap less bite, and back less the rest',
      source: byDefinition,
      value: (use) => beforePoint(subject, use, id),
    }),
    derivation({
      id: `tack.${id}.left`,
      label: `tack ${id}: wood left round it in the body`,
      formula: 'least wood to both faces within its edge distance, to the side, to every cut',
      source: practice(
        'least distance of the solids as drawn; limits are the worst case, each cut as far off as its own limits pass; no source',
      ),
      value: (use) => left(subject, use, id),
    }),
  ]);
};
export default rule;

const SURFACE = { 'cap-face': 'blank-face', 'back-face': 'blank-back', 'glue-face': 'glue-face' } as const;

const surfaceOf = (subject: Subject, use: Use, id: string): SurfaceId => SURFACE[use(kindOf(subject, use, id).face)];

function bar(subject: Subject, use: Use, id: string): Tube {
  const kind = kindOf(subject, use, id);
  const { xMm, yMm } = use.fact(`tack.${id}.spot`);
  const face = use(kind.face);
  const zMm = toMm(surfaceHeight(subject, use, SURFACE[face]));
  const lengthMm = toMm(most(use(kind.length)));
  const bite = use(kind.bite);
  const ends = {
    'cap-face': [zMm - lengthMm, zMm],
    'back-face': [zMm, zMm + lengthMm],
    // As far either way as its limits allow.
    'glue-face': [zMm - lengthMm + toMm(least(bite)), zMm + toMm(most(bite))],
  } as const;
  const [low, high] = ends[face];
  const radiusMm = toMm(most(use(kind.diameter))) / 2 + toMm(most(use(kind['off-mark'])));
  return { kind: 'tube', id: `tack ${id}`, from: { xMm, yMm, zMm: low }, to: { xMm, yMm, zMm: high }, radiusMm };
}

function holds(subject: Subject, use: Use, id: string): Length {
  const kind = kindOf(subject, use, id);
  const length = least(use(kind.length));
  const face = use(kind.face);
  if (face === 'glue-face') return subtract(length, most(use(kind.bite)));
  const through = use.fact(`thickness.part.${face === 'cap-face' ? 'cap' : 'back'}.sized`);
  const glue = subtract(use.fact('thickness.blank'), ...sized(use));
  return subtract(length, most(add(through, glue)));
}

function beforePoint(subject: Subject, use: Use, id: string): Length {
  const kind = kindOf(subject, use, id);
  const length = most(use(kind.length));
  if (use(kind.face) !== 'glue-face') return subtract(least(use.fact('thickness.blank')), length);
  const bite = use(kind.bite);
  const [cap, back] = sized(use);
  const [above, below] = [subtract(least(cap), most(bite)), subtract(least(back), subtract(length, least(bite)))];
  return above.value < below.value ? above : below;
}

const sized = (use: Use): readonly [cap: Length, back: Length] => [
  use.fact('thickness.part.cap.sized'),
  use.fact('thickness.part.back.sized'),
];

function left(subject: Subject, use: Use, id: string): readonly Wood[] {
  if (!use.fact(`tack.${id}.spot`).inBody) return [];
  const own = use.fact(`tack.${id}.bar`);
  return [
    ...(['top', 'back'] as const).flatMap((face) => toFace(subject, use, id, own, face)),
    ...toSide(subject, use, own),
    ...cutsOf(subject.spec).flatMap((cut) => toCut(subject, use, id, own, cut)),
  ];
}

/** A face that falls away beside it is met by the wood next to it: looked at as far round as its edge distance. */
function toFace(subject: Subject, use: Use, id: string, own: Tube, face: 'top' | 'back'): readonly Wood[] {
  const radiusMm = own.radiusMm + toMm(most(use(kindOf(subject, use, id).edge)));
  const found = leftToFace(use.fact('body.shaped'), { ...own, radiusMm }, face);
  if (!found) return [];
  const end = { surface: surfaceOf(subject, use, id) };
  const [below, above] = face === 'top' ? [end, 'top' as const] : ['back' as const, end];
  return [woodOf(face, found, causesUpright(subject, use, below, above, found))];
}

/** Each set-up that cuts the perimeter is an occasion of its own. */
function toSide(subject: Subject, use: Use, own: Tube): readonly Wood[] {
  const { setups } = subject.spec;
  const found = leftToSide(use.fact('outline.polygon'), own);
  return namesOf(setups)
    .map((name) => name as SetupId)
    .filter((name) => setups[name]?.cutters?.['perimeter'] !== undefined)
    .map((name) => woodOf('side', found, placeError(subject, use, name, 'perimeter')));
}

function toCut(subject: Subject, use: Use, id: string, own: Tube, cut: Cut): readonly Wood[] {
  const other = use.fact(`${cutId(cut)}.void`);
  const found = leftBetween(own, other);
  if (!found) return [];
  const end = { surface: surfaceOf(subject, use, id) };
  const [below, above] = isBelow(other, own) ? [{ cut }, end] : [end, { cut }];
  const upright = found.up > 0 ? causesUpright(subject, use, below, above, found) : [];
  const across = Math.sqrt(Math.max(0, 1 - found.up ** 2));
  const aside = scaledCauses(placeCauses(subject, use, cut), across);
  return [woodOf(cutId(cut), found, mergedCauses([...scaledCauses(upright, found.up), ...aside]))];
}
