/** Cuts of a body: cavities and holes, each a requirement between its floor and a surface. */
import type { Use } from '../facts/facts.ts';
import type { Leaf } from '../facts/leaf.ts';
import type { BodyPoint } from '../facts/parts.ts';
import { highestPoint } from '../facts/parts.ts';
import { namesOf, wanted } from '../facts/row.ts';
import type { Subject } from '../facts/subject.ts';
import type { Length } from '../units/quantity.ts';
import type { SetupId, SurfaceId } from './surfaces.ts';
import { setupOf, surfaceOf } from './surfaces.ts';

export type CutKind = 'cavity' | 'hole';

export interface Cut {
  readonly kind: CutKind;
  readonly id: string;
  readonly spec: {
    readonly setup: Leaf<string>;
    readonly from?: Leaf<string>;
    readonly depth?: Leaf<Length>;
    readonly floor?: Leaf<Length>;
    readonly under?: Leaf<BodyPoint>;
  };
}

export const cutsOf = ({ spec }: Subject): readonly Cut[] => [
  ...namesOf(spec.cavities).map((id) => ({ kind: 'cavity' as const, id, spec: spec.cavities![id]! })),
  ...namesOf(spec.holes).map((id) => ({ kind: 'hole' as const, id, spec: spec.holes![id]! })),
];

const tableOf = ({ kind }: Cut): string => (kind === 'cavity' ? 'cavities' : 'holes');

/** What a cut has to hold: a distance from its floor to a surface. */
export interface Requirement {
  readonly setup: SetupId;
  readonly floor: SurfaceId;
  readonly end: SurfaceId;
  readonly distance: Length;
  /** The distance is sign · (z of the end − z of the floor). */
  readonly sign: 1 | -1;
}

export function requirementOf({ spec }: Subject, use: Use, cut: Cut): Requirement {
  const setup = use(cut.spec.setup) as SetupId;
  const fromBack = use(setupOf(spec, setup).up) === 'back';
  const floor = `floor@${cut.kind}.${cut.id}`;
  if (cut.spec.floor) {
    const point = cut.spec.under ? use(cut.spec.under) : highestPoint(spec);
    const end = surfaceOf(spec, fromBack ? 'machined-top' : 'back-face', point);
    return { setup, floor, end, distance: use(cut.spec.floor), sign: fromBack ? 1 : -1 };
  }
  const end = surfaceOf(spec, use(wanted(cut.spec.from, `${tableOf(cut)}.${cut.id}.from`)));
  const distance = use(wanted(cut.spec.depth, `${tableOf(cut)}.${cut.id}.depth`));
  return { setup, floor, end, distance, sign: fromBack ? -1 : 1 };
}
