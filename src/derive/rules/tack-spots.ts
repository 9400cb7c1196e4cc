/** How many tacks, and where each of them stands: as the model places it, else spread by rule along the waste. */
import type { Use } from '../../facts/facts.ts';
import { byDefinition, practice } from '../../facts/facts.ts';
import { hole } from '../../facts/leaf.ts';
import { namesOf } from '../../facts/row.ts';
import type { Subject } from '../../facts/subject.ts';
import type { Point } from '../../geometry/axes.ts';
import { banded } from '../../geometry/banded.ts';
import { evenOffset } from '../../geometry/even-offset.ts';
import { signedArea } from '../../geometry/measure.ts';
import { contains } from '../../geometry/nearness.ts';
import { spreadAlong } from '../../geometry/spread-along.ts';
import { most } from '../../units/arithmetic.ts';
import type { Length, Quantity } from '../../units/quantity.ts';
import { lengthOfMm, toMm } from '../lengths.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';
import { hasJoint, kindName, kindOf, lineTacks, ownTacks, tackIds } from '../tacks.ts';

/** A tack as it stands at the joint, seen from the top, in this hand. */
export interface TackSpot {
  readonly xMm: number;
  readonly yMm: number;
  /** In wood that stays in the body: inside the outline. */
  readonly inBody: boolean;
  /** Name of its row in the plant. */
  readonly kind: string;
}

declare module '../../facts/facts.ts' {
  interface DerivedFacts {
    /** All of them; nothing where the line has none. */
    'tacks.count': Quantity<'count'>;
    /** To be drawn again, and to stay in the wood. */
    'tacks.out': Quantity<'count'>;
    'tacks.stay': Quantity<'count'>;
    /** Of those that stay: in the body for good. */
    'tacks.in-body': Quantity<'count'>;
    'tacks.in-waste': Quantity<'count'>;
    /** Of a kind, by its name in the plant. */
    [id: `tacks.of.${string}`]: Quantity<'count'>;
    /** Places by rule, in order; fewer than the line wants where there is no room. */
    'tacks.by-rule': readonly Point[];
    [id: `tack.${string}.spot`]: TackSpot;
    [id: `tack.${string}.${'x' | 'y'}`]: Length;
    /** The least wood round it, at its greatest. */
    [id: `tack.${string}.edge`]: Length;
  }
}

/** Which tacks are counted. */
type Counted = `tacks.${'out' | 'stay' | 'in-body' | 'in-waste'}`;

const count = (value: number): Quantity<'count'> => ({ kind: 'count', value, unit: '', decimals: 0 });

const rule: Rule = (subject) => {
  if (!hasJoint(subject)) return [];
  const ids = tackIds(subject);
  const counted = (id: Counted, label: string, formula: string) =>
    derivation({
      id,
      label,
      formula,
      source: byDefinition,
      value: (use) => count(ids.filter((tack) => isCounted(subject, use, id, tack)).length),
    });
  return [
    derivation({
      id: 'tacks.count',
      label: 'tacks between cap and back',
      formula: 'as many as the model places, else as many as the line says; none where it says nothing',
      source: byDefinition,
      value: (use) => {
        const own = ownTacks(subject).length;
        const tacks = lineTacks(subject, use);
        return count(own > 0 ? own : tacks ? use(tacks.count).value : 0);
      },
    }),
    counted('tacks.out', 'tacks that are drawn again', 'those whose kind says when they come out'),
    counted('tacks.stay', 'tacks that stay in the wood', 'those whose kind does not say that they come out'),
    counted('tacks.in-waste', 'tacks that stay in the waste', 'those that stay, outside the outline'),
    counted('tacks.in-body', 'pins that stay in the body', 'those that stay, inside the outline'),
    ...namesOf(subject.plant.tacks).map((kind) =>
      derivation({
        id: `tacks.of.${kind}`,
        label: `tacks of kind ${kind}`,
        formula: 'of all tacks, those of this kind',
        source: byDefinition,
        value: (use) => count(ids.filter((id) => use.fact(`tack.${id}.spot`).kind === kind).length),
      }),
    ),
    ...(ownTacks(subject).length > 0
      ? []
      : [
          derivation({
            id: 'tacks.by-rule',
            label: 'tacks spread by rule',
            formula:
              'the line midway between trim kerf and edge of the wood, points evenly along what of it is free, the first half a step from the neck end of the centreline; rounded to 0.1 mm',
            source: practice(
              'tacks round the whole edge, so that cap and back can neither slide nor turn; common practice, no source',
            ),
            value: (use) => byRule(subject, use),
          }),
        ]),
    ...ids.flatMap((id) => one(subject, id)),
  ];
};
export default rule;

function one(subject: Subject, id: string) {
  return [
    derivation({
      id: `tack.${id}.spot`,
      label: `tack ${id}: where it stands`,
      formula: 'as the model places it, mirrored for the left hand; else as spread by rule',
      source: byDefinition,
      value: (use) => {
        const at = placeOf(subject, use, id);
        const inBody = contains(use.fact('outline.polygon'), at.x, at.y);
        return { xMm: at.x, yMm: at.y, inBody, kind: kindName(subject, use, id) };
      },
    }),
    derivation({
      id: `tack.${id}.edge`,
      label: `tack ${id}: least wood round it`,
      formula: 'of its kind, at its greatest',
      source: byDefinition,
      value: (use) => most(use(kindOf(subject, use, id).edge)),
    }),
    ...(['x', 'y'] as const).map((axis) =>
      derivation({
        id: `tack.${id}.${axis}`,
        label: `tack ${id}: ${axis === 'x' ? 'across' : 'along'}`,
        formula: 'of where it stands',
        source: byDefinition,
        value: (use) => lengthOfMm(use.fact(`tack.${id}.spot`)[axis === 'x' ? 'xMm' : 'yMm']),
      }),
    ),
  ];
}

function placeOf(subject: Subject, use: Use, id: string): Point {
  const own = subject.spec.tacks?.[id];
  if (own) return { x: toMm(use(own.at.x)) * (subject.hand === 'left' ? -1 : 1), y: toMm(use(own.at.y)) };
  // Where the waste has no room for it, the rough line is at fault: a check says so.
  return use.fact('tacks.by-rule')[Number(id) - 1] ?? use(hole('saw.rough.distance'));
}

function isCounted(subject: Subject, use: Use, id: Counted, tack: string): boolean {
  const { out } = kindOf(subject, use, tack);
  const when = out && use(out);
  const drawn = when !== undefined;
  if (id === 'tacks.out' || drawn) return id === 'tacks.out' && drawn;
  return id === 'tacks.stay' || use.fact(`tack.${tack}.spot`).inBody === (id === 'tacks.in-body');
}

const tenth = (mm: number): number => Math.round(mm * 10) / 10 + 0;

/** A place is rounded to 0.1 mm: as far off its mark as that moves it counts as set by hand. */
const ROUNDING_MM = 0.08;

function byRule(subject: Subject, use: Use): readonly Point[] {
  const tacks = lineTacks(subject, use);
  if (!tacks) return [];
  const kind = use(tacks.kind);
  const band = use.fact(`tacks.band.${kind}`);
  const zone = use.fact(`tacks.zone.${kind}`);
  // Of a tack as far off its mark as it may stand, all of it.
  const keepMm = toMm(band.diameter) / 2 + toMm(band.offMark) - ROUNDING_MM;
  const open = banded(zone);
  const isFree = (x: number, y: number): boolean => {
    const [px, py] = [tenth(x), tenth(y)];
    return open.contains(px, py) && !open.edgeIsNearer(px, py, keepMm);
  };
  const outMm = (toMm(use.fact(`tacks.from.${kind}`)) + toMm(use.fact(`tacks.to.${kind}`))) / 2 - toMm(band.trim);
  const rings = evenOffset([use.fact('saw.trim.line')], outMm);
  const [middle] = rings.toSorted((a, b) => Math.abs(signedArea(b)) - Math.abs(signedArea(a)));
  const points = zone.length > 0 && middle ? spreadAlong(middle, use(tacks.count).value, isFree) : undefined;
  return (points ?? []).map(({ x, y }) => ({ x: tenth(x), y: tenth(y) }));
}
