/** In which order the cavities of a set-up are cut. */
import { namesOf } from '../facts/row.ts';
import type { Desk } from './station.ts';

export type SetupId = 'glue-face' | 'back' | 'top';

/** Order of cutting; common practice of the trade, no source. */
const ORDER = ['chamber', 'springs', 'controls', 'recess', 'pickup', 'bridge', 'neck', 'other'] as const;

/** Cavities of a set-up in the order they are cut. */
export function cavitiesOf(desk: Desk, id: SetupId): readonly string[] {
  const { cavities } = desk.subject.spec;
  const place = (name: string) => ORDER.indexOf(desk.use(cavities![name]!.purpose));
  return namesOf(cavities)
    .filter((name) => desk.use(cavities![name]!.setup) === id)
    .toSorted((a, b) => place(a) - place(b));
}

/** Those first whose wood left is required: too deep there is through the top. */
export const byFloor = ({ subject: { spec } }: Desk, ids: readonly string[]): readonly string[] => [
  ...ids.filter((id) => spec.cavities![id]!.floor !== undefined),
  ...ids.filter((id) => spec.cavities![id]!.floor === undefined),
];
