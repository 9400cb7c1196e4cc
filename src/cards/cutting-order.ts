/** In which order the cavities of a set-up are cut, as a station reads it. */
import { cavitiesInOrder } from '../facts/cutting-order.ts';
import type { SetupId } from '../facts/cutting-order.ts';
import type { Desk } from './station.ts';

export type { SetupId } from '../facts/cutting-order.ts';

/** Cavities of a set-up in the order they are cut. */
export const cavitiesOf = (desk: Desk, id: SetupId): readonly string[] =>
  cavitiesInOrder(desk.subject.spec, desk.use, id);

/** Those first whose wood left is required: too deep there is through the top. */
export const byFloor = ({ subject: { spec } }: Desk, ids: readonly string[]): readonly string[] => [
  ...ids.filter((id) => spec.cavities![id]!.floor !== undefined),
  ...ids.filter((id) => spec.cavities![id]!.floor === undefined),
];
