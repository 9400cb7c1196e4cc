/** The thinnest wood at each cut, and of the whole body: what the card and the drawing point at. */
import type { Use } from '../../facts/facts.ts';
import { byDefinition } from '../../facts/facts.ts';
import type { Subject } from '../../facts/subject.ts';
import { nominal } from '../../units/arithmetic.ts';
import type { Length } from '../../units/quantity.ts';
import type { Cut, CutId, CutKind } from '../../facts/cuts.ts';
import { cutId, cutsOf, meantToMeet, pairsWith } from '../../facts/cuts.ts';
import { lengthOfMm } from '../lengths.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';
import type { Wood } from './wood-left.ts';

/** The thinnest of a body, and the cut at whose floor it is. */
export interface Thinnest extends Wood {
  readonly cut: CutId;
}

declare module '../../facts/facts.ts' {
  interface DerivedFacts {
    /** At its floor; nothing where it is meant to run into all it meets there. */
    [id: `${CutKind}.${string}.thinnest`]: Wood | undefined;
    /** Nothing where it has no thinnest. */
    [id: `${CutKind}.${string}.floor-left`]: Length | undefined;
    /** The same at worst. */
    [id: `${CutKind}.${string}.floor-worst`]: Length | undefined;
    'body.thinnest': Thinnest | undefined;
    'body.worst-left': Length | undefined;
    'body.thinnest-x': Length | undefined;
    'body.thinnest-y': Length | undefined;
    'body.least-left': Length | undefined;
  }
}

const rule: Rule = (subject) => [
  ...cutsOf(subject.spec).flatMap((cut) => [
    derivation({
      id: `${cutId(cut)}.thinnest`,
      label: `${cut.kind} ${cut.id}: thinnest wood at its floor`,
      formula: 'the least at worst of all that lies above or below it, less what it is meant to run into',
      source: byDefinition,
      value: (use) => thinnestOf(subject, use, cut),
    }),
    derivation({
      id: `${cutId(cut)}.floor-left`,
      label: `${cut.kind} ${cut.id}: wood left at its floor`,
      formula: 'as its thinnest',
      source: byDefinition,
      value: (use) => use.fact(`${cutId(cut)}.thinnest`)?.wood,
    }),
    derivation({
      id: `${cutId(cut)}.floor-worst`,
      label: `${cut.kind} ${cut.id}: wood left at its floor, at worst`,
      formula: 'lower limit of what is left',
      source: byDefinition,
      value: (use) => atWorst(use.fact(`${cutId(cut)}.floor-left`)),
    }),
  ]),
  ...(['x', 'y'] as const).map((axis) =>
    derivation({
      id: `body.thinnest-${axis}`,
      label: `where the body is thinnest, ${axis}`,
      formula: 'place of its thinnest',
      source: byDefinition,
      value: (use) => {
        const left = use.fact('body.thinnest')?.left;
        return left && lengthOfMm(axis === 'x' ? left.xMm : left.yMm);
      },
    }),
  ),
  derivation({
    id: 'body.worst-left',
    label: 'wood left where the body is thinnest, at worst',
    formula: 'lower limit of what is left',
    source: byDefinition,
    value: (use) => atWorst(use.fact('body.least-left')),
  }),
  derivation({
    id: 'body.thinnest',
    label: 'thinnest wood of the body',
    formula: 'the least at worst of the thinnest of all cavities',
    source: byDefinition,
    value: (use) =>
      least(
        cutsOf(subject.spec)
          .filter(({ kind }) => kind === 'cavity')
          .flatMap((cut) => {
            const wood = use.fact(`${cutId(cut)}.thinnest`);
            return wood ? [{ ...wood, cut: cutId(cut) }] : [];
          }),
      ),
  }),
  derivation({
    id: 'body.least-left',
    label: 'wood left where the body is thinnest',
    formula: 'as its thinnest',
    source: byDefinition,
    value: (use) => use.fact('body.thinnest')?.wood,
  }),
];
export default rule;

const atWorst = (left: Length | undefined): Length | undefined =>
  left && { ...nominal(left), value: left.low ?? left.value };

function thinnestOf({ spec }: Subject, use: Use, cut: Cut): Wood | undefined {
  const own = cutId(cut);
  const faces = (['top', 'back'] as const).map((face) => use.fact(`left.${own}.${face}`));
  const others = pairsWith(spec, cut)
    .filter(({ a, b }) => !meantToMeet(use, a, b))
    .map(({ a, b, left }) => {
      const wood = use.fact(left);
      return wood && { ...wood, against: cutId(a === cut ? b : a) };
    });
  return least([...faces, ...others].filter((wood) => wood !== undefined).filter(isUpright));
}

/** Two that open to one face have no wood between their floors. */
const isUpright = ({ left }: Wood): boolean => left.through === 'floor' && left.mm > -Infinity;

const worstOf = ({ wood }: Wood): number => wood.low ?? wood.value;

const least = <W extends Wood>(woods: readonly W[]): W | undefined =>
  woods.reduce<W | undefined>((best, wood) => (best && worstOf(best) <= worstOf(wood) ? best : wood), undefined);
