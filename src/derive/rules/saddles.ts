/** Where the saddles have to stand, and where the bridge's own holes put the middle of their travel. */
import type { Use } from '../../facts/facts.ts';
import { practice } from '../../facts/facts.ts';
import { cutsOf } from '../../facts/cuts.ts';
import { hole } from '../../facts/leaf.ts';
import { wanted } from '../../facts/row.ts';
import type { Subject } from '../../facts/subject.ts';
import { mergedCauses, nominal, withCauses } from '../../units/arithmetic.ts';
import type { Cause, Length } from '../../units/quantity.ts';
import { lengthOfMm, toMm } from '../lengths.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';
import { apartCauses, sideOf, worstOf } from '../location.ts';

/** The outer strings. */
export type Side = 'bass' | 'treble';

declare module '../../facts/facts.ts' {
  interface DerivedFacts
    extends
      /** Behind the bridge line. */
      Record<`saddle.${Side}.stands`, Length>,
      /** How far towards the tail from the middle of its travel it stands then; less than nothing, towards the neck. */
      Record<`saddle.${Side}.from-middle`, Length> {}
}

const tuning = practice('thicker strings sharpen more when fretted, so the bass side stands further back; no source');

const rule: Rule = (subject) => {
  const bridge = subject.spec.bridge as typeof subject.spec.bridge | undefined;
  if (bridge?.compensation === undefined) return [];
  return (['bass', 'treble'] as const).flatMap((side) => [
    derivation({
      id: `saddle.${side}.stands`,
      label: `${side} saddle, behind the bridge line`,
      formula: side === 'bass' ? 'compensation + slant of the bass side' : 'compensation',
      source: tuning,
      value: (use) => stands(subject, use, side),
    }),
    ...(bridge.mounts === undefined
      ? []
      : [
          derivation({
            id: `saddle.${side}.from-middle`,
            label: `${side} saddle, from the middle of its travel`,
            formula:
              'where it has to stand, less where the line through the two holes of the bridge lies under that string, less how far the saddles lie from that line; off by what the machine may put pocket and bridge apart',
            source: tuning,
            value: (use) => fromMiddle(subject, use, side),
          }),
        ]),
  ]);
};
export default rule;

function stands({ spec }: Subject, use: Use, side: Side): Length {
  const compensation = nominal(use(spec.bridge.compensation));
  const { slant } = spec.bridge;
  if (side === 'treble' || !slant) return compensation;
  return { ...compensation, value: compensation.value + use(slant).value };
}

function fromMiddle(subject: Subject, use: Use, side: Side): Length {
  const { spec, hand } = subject;
  const { holes, saddles, spread } = wanted(spec.bridge.mounts, 'bridge.mounts');
  const [a, b] = holes.map((leaf) => use.fact(`hole.${use(leaf)}.spot`));
  if (!a || !b) return use(hole('bridge.mounts.holes'));
  // Two in one place: no line leads through them, and it is the place of the second that is wrong.
  if (a.xMm === b.xMm) return use(hole(`holes.${use(holes[1]!)}.at`));
  // Seen from the top with the neck up, the bass strings of a right hand lie left of the centreline.
  const out = (side === 'bass') === (hand === 'right') ? -1 : 1;
  const xMm = (out * toMm(use(spread))) / 2;
  const line = a.yMm + ((xMm - a.xMm) * (b.yMm - a.yMm)) / (b.xMm - a.xMm);
  const middle = line + toMm(use(saddles));
  const mm = toMm(use.fact(`saddle.${side}.stands`)) + middle;
  return withCauses(lengthOfMm(mm, 1), placed(subject, use));
}

/** Neck and bridge, one against the other; the worse of the two holes. */
function placed(subject: Subject, use: Use): readonly Cause[] {
  const { spec } = subject;
  const cuts = cutsOf(spec);
  const pocket = spec.neck.pocket && use(spec.neck.pocket);
  const neck = cuts.find(({ kind, id }) => kind === 'cavity' && id === pocket);
  const names = wanted(spec.bridge.mounts, 'bridge.mounts').holes.map((leaf) => use(leaf));
  const holes = cuts.filter(({ kind, id }) => kind === 'hole' && names.includes(id));
  if (!neck) return [];
  return mergedCauses(
    worstOf(
      holes.map((cut) => {
        const { xMm, yMm } = use.fact(`hole.${cut.id}.spot`);
        return apartCauses(subject, use, sideOf(use, neck), sideOf(use, cut), { xMm, yMm });
      }),
    ),
  );
}
