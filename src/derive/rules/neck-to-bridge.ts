/** Whether the neck points at the bridge: how far the middle line of its pocket, drawn on, passes beside the bridge's middle. */
import type { Use } from '../../facts/facts.ts';
import { byDefinition } from '../../facts/facts.ts';
import { hole } from '../../facts/leaf.ts';
import { namesOf, wanted } from '../../facts/row.ts';
import type { Subject } from '../../facts/subject.ts';
import type { Point } from '../../geometry/axes.ts';
import { withCauses } from '../../units/arithmetic.ts';
import type { Cause, Length } from '../../units/quantity.ts';
import { lengthOfMm } from '../lengths.ts';
import { pocketFrame } from '../pocket-frame.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';
import { pointOf } from './faces.ts';

/** The bridge's middle as its own holes have it, and as the part that lies there has it. */
export interface BridgeMiddle {
  readonly holes: Point;
  readonly part: Point | undefined;
}

declare module '../../facts/facts.ts' {
  interface DerivedFacts {
    'bridge.middle': BridgeMiddle;
    /** More than nothing: to the treble side. Limits: what the machine may put the two apart. */
    'neck.beside-bridge': Length;
  }
}

const rule: Rule = (subject) => {
  const bridge = subject.spec.bridge as typeof subject.spec.bridge | undefined;
  if (bridge?.mounts === undefined || subject.spec.neck?.pocket === undefined) return [];
  return [
    derivation({
      id: 'bridge.middle',
      label: 'middle of the bridge',
      formula: 'half way between its two holes; of a part under `fittings` that takes them, where that lies',
      source: byDefinition,
      value: (use) => middleOf(subject, use),
    }),
    derivation({
      id: 'neck.beside-bridge',
      label: 'neck line beside the middle of the bridge',
      formula:
        'middle line of the pocket as drawn, carried on, across to the nearer of the two middles of the bridge; limits are those of neck and bridge, sideways',
      source: byDefinition,
      value: (use) => withCauses(lengthOfMm(besideMm(subject, use), 2), causesOf(subject, use)),
    }),
  ];
};
export default rule;

const mountNames = ({ spec }: Subject, use: Use): readonly string[] =>
  wanted(spec.bridge.mounts, 'bridge.mounts').holes.map((leaf) => use(leaf));

function middleOf(subject: Subject, use: Use): BridgeMiddle {
  const { spec } = subject;
  const names = mountNames(subject, use);
  const [a, b] = names.map((name) => use.fact(`hole.${name}.spot`));
  if (!a || !b) return use(hole('bridge.mounts.holes'));
  const part = namesOf(spec.fittings).find((id) =>
    use.fact(`fitted.fitting.${id}.mounts`).some((mount) => mount.hole !== undefined && names.includes(mount.hole)),
  );
  const at = part === undefined ? undefined : spec.fittings![part]!.at;
  return {
    holes: { x: (a.xMm + b.xMm) / 2, y: (a.yMm + b.yMm) / 2 },
    part: at && pointOf(subject, use, at),
  };
}

/** Where bridge and holes are drawn apart, that is a mistake of its own: the nearer of the two counts here. */
function besideMm(subject: Subject, use: Use): number {
  const { box, point } = pocketFrame(subject, use);
  const { holes, part } = use.fact('bridge.middle');
  const passes = [holes, ...(part ? [part] : [])].map((middle) => (box.minX + box.maxX) / 2 - point(middle).x);
  const [nearest] = passes.toSorted((one, other) => Math.abs(one) - Math.abs(other));
  return nearest! * (subject.hand === 'left' ? -1 : 1);
}

/** The worst of the bridge's own holes, one against the pocket. */
function causesOf(subject: Subject, use: Use): readonly Cause[] {
  const names = mountNames(subject, use);
  const offs = use
    .fact('sideways.pairs')
    .filter(({ word, b }) => word === 'neck-to-bridge' && names.includes(b.id))
    .map(({ off }) => off);
  const [worst] = offs.toSorted((a, b) => (b.high ?? 0) - (a.high ?? 0));
  return worst?.causes ?? [];
}
