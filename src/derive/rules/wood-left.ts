/** Wood left round every cut: to both faces, to the side of the body, to every other cut near it; nominal and at worst. */
import type { Use } from '../../facts/facts.ts';
import { practice } from '../../facts/facts.ts';
import type { Subject } from '../../facts/subject.ts';
import type { Void } from '../../geometry/solid/solid.ts';
import type { Left } from '../../geometry/solid/wood-left.ts';
import { leftBetween, leftToFace, leftToSide } from '../../geometry/solid/wood-left.ts';
import { mergedCauses, scaledCauses, withCauses } from '../../units/arithmetic.ts';
import type { Cause, Length } from '../../units/quantity.ts';
import type { Cut } from '../../facts/cuts.ts';
import { cutId, cutsOf, meantToMeet, pairsOf, pairsWith } from '../../facts/cuts.ts';
import { lengthOfMm } from '../lengths.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';
import type { End } from '../wood.ts';
import { apartCauses, perimetersOf, setupsApart, sideOf, worstOf } from '../location.ts';
import { causesUpright, placeCauses, widthCauses } from '../wood.ts';

export interface Wood {
  /** `top`, `back`, `side`, or the other cut: `cavity.controls`. */
  readonly against: string;
  readonly left: Left;
  /** Nominal, and at worst either way. Below nothing: they meet. */
  readonly wood: Length;
}

declare module '../../facts/facts.ts' {
  interface DerivedFacts {
    /** `left.cavity.controls.top`; of two cuts, in the order of the spec. Nothing where they are far apart. */
    [id: `left.${string}`]: Wood | undefined;
  }
}

const graph = practice(
  'least distance of the solids as drawn; limits are the worst case of what lies between them, each cut as far off as its own limits pass; tolerance graph, no source',
);

const rule: Rule = (subject) => [
  ...cutsOf(subject.spec).flatMap((cut) => [
    ...(['top', 'back'] as const).map((face) =>
      left(`left.${cutId(cut)}.${face}`, `${nameOf(cut)}: wood to the ${face}`, (use) =>
        toFace(subject, use, cut, face),
      ),
    ),
    left(`left.${cutId(cut)}.side`, `${nameOf(cut)}: wood to the side of the body`, (use) => toSide(subject, use, cut)),
  ]),
  ...pairsOf(subject.spec).map((pair) =>
    left(pair.left, `wood between ${nameOf(pair.a)} and ${nameOf(pair.b)}`, (use) =>
      between(subject, use, pair.a, pair.b),
    ),
  ),
];
export default rule;

const nameOf = ({ kind, id }: Cut): string => `${kind} ${id}`;

function left(id: `left.${string}`, label: string, value: (use: Use) => Wood | undefined) {
  return derivation({ id, label, formula: 'least wood left', source: graph, value });
}

function toFace(subject: Subject, use: Use, cut: Cut, face: 'top' | 'back'): Wood | undefined {
  const own = use.fact(`${cutId(cut)}.void`);
  const opened = openings(subject, use, cut, face);
  const less = opened.flatMap((one) => one.region);
  const found = leftToFace(use.fact('body.shaped'), own, face, less);
  if (!found) return undefined;
  const roof = own.kind === 'pocket' && own.opens === 'glue-face' && face === 'top';
  const end: End = roof ? { cut, roof } : { cut };
  const [below, above] = face === 'top' ? [end, 'top' as const] : ['back' as const, end];
  const { setup } = sideOf(use, cut);
  const slides = [
    ...placeCauses(subject, use, cut),
    ...opened.flatMap((one) => [
      ...placeCauses(subject, use, one.cut),
      ...setupsApart(subject, use, setup, sideOf(use, one.cut).setup, found),
    ]),
  ];
  const upright = causesUpright(subject, use, below, above, found);
  const width = own.kind === 'tube' ? widthCauses(subject, use, cut) : [];
  return woodOf(face, found, mergedCauses([...upright, ...scaledCauses(slides, slopeOf(own)), ...width]));
}

/** What a cut is meant to run into and opens to the face: no wood is to be left there. */
function openings({ spec }: Subject, use: Use, cut: Cut, face: 'top' | 'back') {
  return pairsWith(spec, cut)
    .filter(({ a, b }) => meantToMeet(use, a, b))
    .flatMap(({ a, b }) => {
      const other = a === cut ? b : a;
      const own = use.fact(`${cutId(other)}.void`);
      return own.kind === 'pocket' && own.opens === face ? [{ cut: other, region: own.region }] : [];
    });
}

/** mm up for each mm along: what it finds above it or below when something lies off sideways. */
function slopeOf(cut: Void): number {
  if (cut.kind === 'pocket') return Math.abs(cut.floor.slope);
  const { from, to } = cut;
  return Math.abs(to.zMm - from.zMm) / Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm);
}

function toSide(subject: Subject, use: Use, cut: Cut): Wood {
  const found = leftToSide(use.fact('outline.polygon'), use.fact(`${cutId(cut)}.void`));
  const own = sideOf(use, cut);
  const cutting = perimetersOf(subject);
  // Which of them cut it at the depth of this wall is not known: the worse counts.
  const causes =
    cutting.length === 0
      ? placeCauses(subject, use, cut)
      : worstOf(cutting.map((perimeter) => apartCauses(subject, use, own, perimeter, found)));
  return woodOf('side', found, mergedCauses([...causes, ...widthCauses(subject, use, cut)]));
}

function between(subject: Subject, use: Use, a: Cut, b: Cut): Wood | undefined {
  const [one, other] = [use.fact(`${cutId(a)}.void`), use.fact(`${cutId(b)}.void`)];
  const found = leftBetween(one, other);
  if (!found) return undefined;
  if (found.mm === -Infinity) return woodOf(cutId(b), found, []);
  const [below, above] = isBelow(one, other) ? [a, b] : [b, a];
  // First order: a way through the wood that leans takes its part of either. It never says too much is left.
  const upright =
    found.up > 0 ? causesUpright(subject, use, endOf(use, below, 'above'), endOf(use, above, 'below'), found) : [];
  const across = apartCauses(subject, use, sideOf(use, a), sideOf(use, b), found);
  // A channel is that much wider upward too; the floor of a hole is not.
  const wider = [a, b].flatMap((cut) =>
    cut.kind === 'channel' || found.through === 'wall' ? widthCauses(subject, use, cut) : [],
  );
  // Off sideways, a wall is thinner by that; a floor, by as much as its ends slope.
  const sideways =
    found.through === 'floor' ? slopeOf(one) + slopeOf(other) : Math.sqrt(Math.max(0, 1 - found.up ** 2));
  return woodOf(
    cutId(b),
    found,
    mergedCauses([...scaledCauses(upright, found.up), ...scaledCauses(across, sideways), ...wider]),
  );
}

/** What of a cut faces the other: the roof of a chamber, to what lies above it. */
function endOf(use: Use, cut: Cut, other: 'above' | 'below'): End {
  const own = use.fact(`${cutId(cut)}.void`);
  return own.kind === 'pocket' && own.opens === 'glue-face' && other === 'above' ? { cut, roof: true } : { cut };
}

/** Whether the first lies below the second. */
export const isBelow = (one: Void, other: Void): boolean => heightOf(one) <= heightOf(other);

function heightOf(cut: Void): number {
  if (cut.kind === 'tube') return (cut.from.zMm + cut.to.zMm) / 2;
  if (cut.opens === 'glue-face') return (cut.floor.zMm + cut.roofMm!) / 2;
  return cut.opens === 'back' ? -Infinity : Infinity;
}

/** Nominal to the thousandth; off by what its causes say. */
export function woodOf(against: string, left: Left, causes: readonly Cause[]): Wood {
  const mm = Math.max(left.mm, -MEETING_MM);
  return { against, left, wood: withCauses(lengthOfMm(mm, 2), causes) };
}

/** Two that open to one face overlap without end; any number as far below nothing will do. */
const MEETING_MM = 999;
