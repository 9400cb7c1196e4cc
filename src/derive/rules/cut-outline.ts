/** Outlines of cavities and places of holes, seen from the top; mirrored for the left hand. */
import type { Use } from '../../facts/facts.ts';
import { byDefinition } from '../../facts/facts.ts';
import { namesOf, wanted } from '../../facts/row.ts';
import type { Model } from '../../facts/spec.generated.ts';
import type { Subject } from '../../facts/subject.ts';
import { CHORD_MM } from '../../geometry/flatten.ts';
import type { Shape } from '../../geometry/shape.ts';
import { shapePolygon } from '../../geometry/shape.ts';
import { mirror } from '../../geometry/transform.ts';
import { add, nominal, scale } from '../../units/arithmetic.ts';
import type { Length } from '../../units/quantity.ts';
import { toMm } from '../lengths.ts';
import { setupOf } from '../surfaces.ts';
import type { SetupId } from '../../facts/cutting-order.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';
import type { Drawn } from './outline.ts';

/** A hole as it lies, seen from the top, mm. */
export interface Spot {
  readonly xMm: number;
  readonly yMm: number;
  readonly diameterMm: number;
}

declare module '../../facts/facts.ts' {
  interface DerivedFacts {
    [id: `cavity.${string}.drawn`]: Drawn;
    [id: `hole.${string}.spot`]: Spot;
    /** Across, to the right of the centreline, as it lies under the tool of its set-up. */
    [id: `hole.${string}.across`]: Length;
    [id: `channel.${string}.${'start' | 'end'}-across`]: Length;
    [id: `contour.${string}.${'from' | 'to'}-across`]: Length;
    /** Of its axis at its end, below the surface it is measured from. */
    [id: `channel.${string}.end-depth`]: Length;
  }
}

const rule: Rule = (subject) => [
  ...namesOf(subject.spec.cavities).map((id) =>
    derivation({
      id: `cavity.${id}.drawn`,
      label: `cavity ${id}: outline`,
      formula: 'shape placed by point and angle, chord error at most 0.01 mm; mirrored for the left hand',
      source: byDefinition,
      value: (use) => drawnAt(subject, use, subject.spec.cavities![id]!, `cavities.${id}`),
    }),
  ),
  ...namesOf(subject.spec.holes).map((id) =>
    derivation({
      id: `hole.${id}.across`,
      label: `hole ${id}: across, as it lies under the tool`,
      formula: 'x as given; the other way for the left hand, and the other way again with the back up',
      source: byDefinition,
      value: (use) => {
        const { at, setup } = subject.spec.holes![id]!;
        return acrossOf(subject, backUp(subject, use, setup), use(at.x));
      },
    }),
  ),
  ...namesOf(subject.spec.holes).map((id) =>
    derivation({
      id: `hole.${id}.spot`,
      label: `hole ${id}: place and diameter`,
      formula: 'as given; mirrored for the left hand',
      source: byDefinition,
      value: (use) => {
        const { at, diameter } = subject.spec.holes![id]!;
        const xMm = toMm(use(at.x)) * (subject.hand === 'left' ? -1 : 1);
        return { xMm, yMm: toMm(use(at.y)), diameterMm: toMm(use(diameter)) };
      },
    }),
  ),
  ...namesOf(subject.spec.contours).flatMap((id) =>
    (['from', 'to'] as const).map((end) =>
      derivation({
        id: `contour.${id}.${end}-across`,
        label: `contour ${id}: ${end} across, as it lies under the tool`,
        formula: 'x as given; the other way for the left hand, and the other way again with the back up',
        source: byDefinition,
        value: (use) => {
          const contour = subject.spec.contours![id]!;
          return acrossOf(subject, use(contour.face) === 'back', use(contour[end].x));
        },
      }),
    ),
  ),
  ...namesOf(subject.spec.channels).flatMap((id) => [
    ...(['start', 'end'] as const).map((end) =>
      derivation({
        id: `channel.${id}.${end}-across`,
        label: `channel ${id}: its ${end} across, as it lies under the tool`,
        formula: 'x as given; the other way for the left hand, and the other way again with the back up',
        source: byDefinition,
        value: (use) => {
          const channel = subject.spec.channels![id]!;
          return acrossOf(subject, backUp(subject, use, channel.setup), use(channel[end].x));
        },
      }),
    ),
    derivation({
      id: `channel.${id}.end-depth`,
      label: `channel ${id}: depth of its axis at its end`,
      formula: 'depth at its start + what it falls',
      source: byDefinition,
      value: (use) => {
        const { depth, falls } = subject.spec.channels![id]!;
        return nominal(falls ? add(use(depth), use(falls)) : use(depth));
      },
    }),
  ]),
];
export default rule;

/** Seen as the tool of the set-up sees it. */
const acrossOf = ({ hand }: Subject, back: boolean, x: Length): Length =>
  scale(x, (hand === 'left' ? -1 : 1) * (back ? -1 : 1));

const backUp = ({ spec }: Subject, use: Use, setup: Model.Hole['setup']): boolean =>
  use(setupOf(spec, use(setup) as SetupId).up) === 'back';

interface Placed {
  readonly shape: Model.Shape;
  readonly at: Model.Point;
  readonly angle?: Model.Cavity['angle'];
  readonly corner?: Model.Cavity['corner'];
}

/** A shape where it lies; mirrored for the left hand. `id` of what it belongs to. */
export function drawnAt(
  { hand }: Subject,
  use: Use,
  { shape, at, angle, corner }: Placed,
  id: string,
  chordMm = CHORD_MM,
): Drawn {
  const placement = { xMm: toMm(use(at.x)), yMm: toMm(use(at.y)), angleDeg: angle ? use(angle).value : 0 };
  const made = shapePolygon(shapeOf(use, shape, `${id}.shape`, corner ? toMm(use(corner)) : 0), placement, chordMm);
  if (!made.ok) return { ok: false, at: made.at ?? 0, what: made.what, mend: made.mend };
  return { ok: true, polygon: hand === 'left' ? mirror(made.polygon) : made.polygon };
}

function shapeOf(use: Use, shape: Model.Shape, id: string, cornerMm: number): Shape {
  const kind = use(shape.kind);
  const mm = (leaf: Model.Shape['length'], name: string) => toMm(use(wanted(leaf, `${id}.${name}`)));
  if (kind === 'circle') return { kind, diameterMm: mm(shape.diameter, 'diameter') };
  if (kind === 'path') return { kind, d: use(wanted(shape.path, `${id}.path`)) };
  if (kind === 'polygon') {
    const points = wanted(shape.points, `${id}.points`).map(({ x, y, corner }) => {
      return { xMm: toMm(use(x)), yMm: toMm(use(y)), cornerMm: corner ? toMm(use(corner)) : cornerMm };
    });
    return { kind, points };
  }
  const size = { lengthMm: mm(shape.length, 'length'), widthMm: mm(shape.width, 'width') };
  return kind === 'slot' ? { kind, ...size } : { kind, ...size, cornerMm };
}
