/**
 * The body after each operation, in the order of the set-ups: what was taken, what volume is left, and where the wood is
 * thinnest then, nominal and at worst. Before the top is carved, what stands over a cavity is counted to the face of the
 * blank; before the back is faced, what lies under one to the back as glued.
 */
import type { Use } from '../../facts/facts.ts';
import { byDefinition } from '../../facts/facts.ts';
import type { Cut, CutId, Pair } from '../../facts/cuts.ts';
import { cutId, isCavity, meantToMeet, pairsOf } from '../../facts/cuts.ts';
import type { SetupId } from '../../facts/cutting-order.ts';
import { cutsInOrder, setupOrder } from '../../facts/cutting-order.ts';
import type { Subject } from '../../facts/subject.ts';
import type { Length, Quantity } from '../../units/quantity.ts';
import { lengthOfMm, toMm } from '../lengths.ts';
import { withCauses } from '../../units/arithmetic.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';
import { requirementOf } from '../cuts.ts';
import type { SurfaceId } from '../surfaces.ts';
import { causesApart, setupOf, surfaceHeight, surfaceOf } from '../surfaces.ts';
import { floorEnds, passed } from '../wood.ts';

export interface Operation {
  /** `face`, `carve`, or the cut. */
  readonly what: 'face' | 'carve' | CutId;
  readonly setup: SetupId;
  readonly removed: Quantity<'volume'>;
  /** Inside the outline, after it. */
  readonly left: Quantity<'volume'>;
  /** The thinnest floor there is by then. */
  readonly thinnest: { readonly cut: CutId; readonly wood: Length } | undefined;
}

declare module '../../facts/facts.ts' {
  interface DerivedFacts {
    operations: readonly Operation[];
  }
}

const rule: Rule = (subject) => [
  derivation({
    id: 'operations',
    label: 'the body after each operation',
    formula: 'volumes of the solid with the cuts made so far; least of the wood left between them at worst',
    source: byDefinition,
    value: (use) => operations(subject, use),
  }),
];
export default rule;

interface Step {
  readonly what: Operation['what'];
  readonly setup: SetupId;
  readonly cut?: Cut;
}

const volume = (mm3: number): Quantity<'volume'> => ({ kind: 'volume', value: mm3 / 1e9, unit: 'cm³', decimals: 0 });

function operations(subject: Subject, use: Use): readonly Operation[] {
  const { spec } = subject;
  const steps = setupOrder
    .filter((setup) => spec.setups[setup] !== undefined)
    .flatMap((setup): Step[] => [
      ...(setupOf(spec, setup).faces === undefined ? [] : [{ what: 'face' as const, setup }]),
      ...(setup === 'top' ? [{ what: 'carve' as const, setup }] : []),
      ...cutsInOrder(spec, use, setup).map((cut) => ({ what: cutId(cut), setup, cut })),
    ]);
  const taken = volumesOf(subject, use);
  const pairs = pairsOf(spec).filter(({ a, b }) => isCavity(a) && isCavity(b));
  let leftMm3 = taken.blank;
  return steps.map(({ what, setup }, i) => {
    const removed = taken.by(what);
    leftMm3 -= removed;
    const done = steps.slice(0, i + 1);
    const thinnest = thinnestThen(subject, use, done, pairs);
    return { what, setup, removed: volume(removed), left: volume(leftMm3), thinnest };
  });
}

/** Of the blank inside the outline, and of what each operation takes. */
function volumesOf(subject: Subject, use: Use) {
  const field = use.fact('body.field');
  const { voids } = use.fact('body.solid');
  const areaMm2 = use.fact('outline.area').value * 1e6;
  const blank = toMm(use.fact('thickness.blank')) * areaMm2;
  const face = -toMm(surfaceHeight(subject, use, 'blank-back')) * areaMm2;
  // What facing and the two shaped faces leave is known: the rest went in the carve, contours of both faces with it.
  const carve = blank - face - field.shapedMm3;
  const by = (what: Operation['what']): number => {
    if (what === 'face') return face;
    return what === 'carve' ? carve : field.removedMm3[voids.findIndex(({ id }) => id === what)]!;
  };
  return { blank, by };
}

function thinnestThen(
  subject: Subject,
  use: Use,
  done: readonly Step[],
  pairs: readonly Pair[],
): Operation['thinnest'] {
  const has = (what: Step['what']) => done.some((step) => step.what === what);
  const cuts = done.flatMap(({ cut }) => (cut && isCavity(cut) ? [cut] : []));
  const floors = cuts.flatMap((cut) =>
    (['top', 'back'] as const).flatMap((face) => {
      const wood = toFaceThen(subject, use, cut, { face, carved: has('carve'), faced: has('face') });
      return wood ? [{ cut: cutId(cut), wood }] : [];
    }),
  );
  const there = new Set(cuts.map(cutId));
  const between = pairs.flatMap(({ a, b, left }) => {
    if (!there.has(cutId(a)) || !there.has(cutId(b)) || meantToMeet(use, a, b)) return [];
    const found = use.fact(left);
    return found?.left.through === 'floor' && found.left.mm > -Infinity ? [{ cut: cutId(b), wood: found.wood }] : [];
  });
  const worst = (wood: Length) => wood.low ?? wood.value;
  return [...floors, ...between].toSorted((x, y) => worst(x.wood) - worst(y.wood))[0];
}

interface Then {
  readonly face: 'top' | 'back';
  readonly carved: boolean;
  readonly faced: boolean;
}

/** To the finished face where it is there; else to the plane of the blank. Nothing where the cut opens to that side. */
function toFaceThen(subject: Subject, use: Use, cut: Cut, { face, carved, faced }: Then): Length | undefined {
  const { spec } = subject;
  const up = use(setupOf(spec, use(cut.spec.setup) as SetupId).up);
  const opens = up === 'back' ? 'back' : 'top';
  if (opens === face) return up === 'glue-face' && carved ? use.fact(`left.${cutId(cut)}.top`)?.wood : undefined;
  const plane: SurfaceId | undefined =
    face === 'top' && !carved
      ? 'blank-face'
      : face === 'back' && !faced && up === 'glue-face'
        ? 'blank-back'
        : undefined;
  if (plane === undefined) return use.fact(`left.${cutId(cut)}.${face}`)?.wood;
  const { floor } = requirementOf(subject, use, cut);
  const ends = floorEnds(use.fact(`${cutId(cut)}.void`));
  const zMm = toMm(surfaceHeight(subject, use, surfaceOf(spec, plane)));
  const mm = face === 'top' ? zMm - ends.high : ends.low - zMm;
  const [from, to] = face === 'top' ? [floor, plane] : [plane, floor];
  return withCauses(lengthOfMm(mm, 2), causesApart(subject, use, from, to, [passed(subject, use, cut)]));
}
