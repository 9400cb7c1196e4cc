/** Outlines of cavities and places of holes, seen from the top; mirrored for the left hand. */
import type { Use } from '../../facts/facts.ts';
import { byDefinition } from '../../facts/facts.ts';
import { namesOf, wanted } from '../../facts/row.ts';
import type { Model } from '../../facts/spec.generated.ts';
import type { Subject } from '../../facts/subject.ts';
import type { Shape } from '../../geometry/shape.ts';
import { shapePolygon } from '../../geometry/shape.ts';
import { mirror } from '../../geometry/transform.ts';
import { scale } from '../../units/arithmetic.ts';
import type { Length } from '../../units/quantity.ts';
import { toMm } from '../lengths.ts';
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
  }
}

const rule: Rule = (subject) => [
  ...namesOf(subject.spec.cavities).map((id) =>
    derivation({
      id: `cavity.${id}.drawn`,
      label: `cavity ${id}: outline`,
      formula: 'shape placed by point and angle, chord error at most 0.01 mm; mirrored for the left hand',
      source: byDefinition,
      value: (use) => cavity(subject, use, id),
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
        const back = use(subject.spec.setups[use(setup) as 'back' | 'top'].up) === 'back';
        return scale(use(at.x), (subject.hand === 'left' ? -1 : 1) * (back ? -1 : 1));
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
];
export default rule;

function cavity({ spec, hand }: Subject, use: Use, id: string): Drawn {
  const { shape, at, angle, corner } = spec.cavities![id]!;
  const placement = { xMm: toMm(use(at.x)), yMm: toMm(use(at.y)), angleDeg: angle ? use(angle).value : 0 };
  const made = shapePolygon(shapeOf(use, shape, `cavities.${id}.shape`, toMm(use(corner))), placement);
  if (!made.ok) return { ok: false, at: made.at ?? 0, what: made.what, mend: made.mend };
  return { ok: true, polygon: hand === 'left' ? mirror(made.polygon) : made.polygon };
}

function shapeOf(use: Use, shape: Model.Shape, id: string, cornerMm: number): Shape {
  const kind = use(shape.kind);
  const mm = (leaf: Model.Shape['length'], name: string) => toMm(use(wanted(leaf, `${id}.${name}`)));
  if (kind === 'circle') return { kind, diameterMm: mm(shape.diameter, 'diameter') };
  if (kind === 'path') return { kind, d: use(wanted(shape.path, `${id}.path`)) };
  const size = { lengthMm: mm(shape.length, 'length'), widthMm: mm(shape.width, 'width') };
  return kind === 'slot' ? { kind, ...size } : { kind, ...size, cornerMm };
}
