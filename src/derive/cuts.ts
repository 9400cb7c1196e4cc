/** What each cut has to hold: a requirement between its floor (or axis) and a surface. */
import type { Use } from '../facts/facts.ts';
import type { Cut } from '../facts/cuts.ts';
import { tableOf } from '../facts/cuts.ts';
import { wanted } from '../facts/row.ts';
import type { Subject } from '../facts/subject.ts';
import type { Length } from '../units/quantity.ts';
import type { SurfaceId } from './surfaces.ts';
import type { SetupId } from '../facts/cutting-order.ts';
import { overCut, setupOf, surfaceOf } from './surfaces.ts';

/** The surface a cut makes: its floor, or the axis of a channel. */
export const floorOf = ({ kind, id }: Pick<Cut, 'kind' | 'id'>): SurfaceId => `floor@${kind}.${id}`;

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
  const floor = floorOf(cut);
  if (cut.spec.floor) {
    const end = fromBack ? overCut(cut.id) : surfaceOf(spec, 'back-face');
    return { setup, floor, end, distance: use(cut.spec.floor), sign: fromBack ? 1 : -1 };
  }
  const end = surfaceOf(spec, use(wanted(cut.spec.from, `${tableOf(cut)}.${cut.id}.from`)));
  const distance = use(wanted(cut.spec.depth, `${tableOf(cut)}.${cut.id}.depth`));
  return { setup, floor, end, distance, sign: fromBack ? -1 : 1 };
}
