/** What every cavity, hole and channel takes out of the body, at its nominal size. */
import type { Use } from '../../facts/facts.ts';
import { byDefinition } from '../../facts/facts.ts';
import { hole } from '../../facts/leaf.ts';
import type { Model } from '../../facts/spec.generated.ts';
import type { Subject } from '../../facts/subject.ts';
import { bounds } from '../../geometry/measure.ts';
import type { Region } from '../../geometry/polygon.ts';
import { shapePolygon } from '../../geometry/shape.ts';
import { mirror } from '../../geometry/transform.ts';
import type { Floor, Pocket, Tube, Void } from '../../geometry/solid/solid.ts';
import { level } from '../../geometry/solid/solid.ts';
import type { Cut, CutKind } from '../../facts/cuts.ts';
import { cutId, cutsOf } from '../../facts/cuts.ts';
import { requirementOf } from '../cuts.ts';
import { namesOf } from '../../facts/row.ts';
import type { Length } from '../../units/quantity.ts';
import { lengthOfMm, toMm } from '../lengths.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';
import { setupOf, surfaceHeight } from '../surfaces.ts';
import { floorHeight } from './cut-depth.ts';
import { pointOf } from './faces.ts';

declare module '../../facts/facts.ts' {
  interface DerivedFacts {
    [id: `${CutKind}.${string}.void`]: Void;
    [id: `channel.${string}.length`]: Length;
  }
}

const rule: Rule = (subject) => [
  ...cutsOf(subject.spec).map((cut) =>
    derivation({
      id: `${cut.kind}.${cut.id}.void`,
      label: `${cut.kind} ${cut.id}: what it takes`,
      formula:
        'its outline, from its floor to the face it opens to; of a channel, a round bar from its start to its end; holes end flat at the depth of their point',
      source: byDefinition,
      value: (use) => (cut.kind === 'channel' ? tube(subject, use, cut) : pocket(subject, use, cut)),
    }),
  ),
  ...namesOf(subject.spec.channels).map((id) =>
    derivation({
      id: `channel.${id}.length`,
      label: `channel ${id}: length`,
      formula: 'from its start to its end, along the axis',
      source: byDefinition,
      value: (use) => {
        const own = use.fact(`channel.${id}.void`);
        if (own.kind !== 'tube') return use(hole(`channels.${id}`));
        const { from, to } = own;
        return lengthOfMm(Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm, to.zMm - from.zMm));
      },
    }),
  ),
];
export default rule;

function pocket(subject: Subject, use: Use, cut: Cut): Pocket {
  const requirement = requirementOf(subject, use, cut);
  const up = use(setupOf(subject.spec, requirement.setup).up);
  const region = regionOf(subject, use, cut);
  const zMm = toMm(floorHeight(subject, use, requirement));
  const falls = cut.spec.falls ? toMm(use(cut.spec.falls)) : 0;
  return {
    kind: 'pocket',
    id: cutId(cut),
    region,
    opens: up,
    floor: falls === 0 ? level(zMm) : sloping(region, zMm, up === 'back' ? falls : -falls),
    roofMm: up === 'glue-face' ? toMm(surfaceHeight(subject, use, 'glue-face')) : undefined,
  };
}

/** A floor that changes by `riseMm` from its tail end, where it lies at zMm, to its neck end. */
function sloping(region: Region, zMm: number, riseMm: number): Floor {
  const { minY, maxY } = bounds(region[0]!)!;
  return { zMm, slope: riseMm / (maxY - minY), yMm: minY };
}

function regionOf({ hand }: Subject, use: Use, { kind, id }: Cut): Region {
  if (kind === 'cavity') {
    const drawn = use.fact(`cavity.${id}.drawn`);
    return drawn.ok ? [drawn.polygon] : use(hole(`cavities.${id}.shape`));
  }
  const spot = use.fact(`hole.${id}.spot`);
  // The left hand's is the mirror image of the right's, corner by corner.
  const left = hand === 'left';
  const made = shapePolygon({ kind: 'circle', diameterMm: spot.diameterMm }, left ? { ...spot, xMm: -spot.xMm } : spot);
  if (!made.ok) return use(hole(`holes.${id}.diameter`));
  return [left ? mirror(made.polygon) : made.polygon];
}

function tube(subject: Subject, use: Use, cut: Cut): Tube {
  const channel: Model.Channel = subject.spec.channels![cut.id]!;
  const zMm = toMm(floorHeight(subject, use, requirementOf(subject, use, cut)));
  const falls = channel.falls ? toMm(use(channel.falls)) : 0;
  const down = use(setupOf(subject.spec, requirementOf(subject, use, cut).setup).up) === 'back' ? 1 : -1;
  const at = (point: Model.Point, z: number) => {
    const { x, y } = pointOf(subject, use, point);
    return { xMm: x, yMm: y, zMm: z };
  };
  return {
    kind: 'tube',
    id: cutId(cut),
    from: at(channel.start, zMm),
    to: at(channel.end, zMm + down * falls),
    radiusMm: toMm(use(channel.diameter)) / 2,
  };
}
