/** Parts of a body: a cap on a back, or a slab. */
import type { ModelSpec } from './spec.generated.ts';
import { present, wanted } from './row.ts';

export type Part = 'cap' | 'back' | 'slab';
export type PartStage = 'rough' | 'planed' | 'sized';
export type BodyPoint = 'crown' | 'face' | 'land';

/** In the order they are stacked, top first. */
export function partsOf(spec: ModelSpec): readonly Part[] {
  return present(spec.timber)?.slab ? ['slab'] : ['cap', 'back'];
}

/** Surfaces a body of these parts has not: a slab has no cap face, a capped body no slab face. */
export const surfacesNotThere = (spec: ModelSpec): readonly string[] =>
  partsOf(spec).includes('slab') ? ['cap-face', 'glue-face'] : ['slab-face'];

/** What a part is cut from. */
export const boardOf = (spec: ModelSpec, part: Part) => wanted(present(spec.timber)?.[part], `timber.${part}`);

/** A cap's own: its halves and their match. */
export const capOf = (spec: ModelSpec) => wanted(present(spec.timber)?.cap, 'timber.cap');

export const partStages: readonly PartStage[] = ['rough', 'planed', 'sized'];

const points: readonly BodyPoint[] = ['crown', 'face', 'land'];

/** Named points a body stage gives a thickness at. */
export function pointsOf(spec: ModelSpec, stage: 'machined' | 'white' | 'coated'): readonly BodyPoint[] {
  const given = present(present(present(spec.stages)?.body)?.[stage]);
  return points.filter((point) => given && Object.hasOwn(given, point));
}

/** The named point at which the body is thickest: the first that the machined stage gives. */
export const highestPoint = (spec: ModelSpec): BodyPoint => pointsOf(spec, 'machined')[0] ?? 'face';

/** Whether the first set-up skims the back. */
export const facesBack = (spec: ModelSpec): boolean =>
  Object.values(present(spec.setups) ?? {}).some((setup) => present(setup)?.faces !== undefined);
