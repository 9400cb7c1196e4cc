/** Where a map of a spec was written: for findings about a thing as a whole, such as one cavity. */
import type { Place } from '../findings/finding.ts';
import { holeId } from './leaf.ts';

const AT = Symbol('written at');

/** Marks a map with the place of its key. */
export function markPlace<T extends object>(map: T, place: Place): T {
  Object.defineProperty(map, AT, { value: place, enumerable: false });
  return map;
}

/** Where the key of this map stands; undefined of a hole. */
export function placeOf(map: object | undefined): Place | undefined {
  return map === undefined || holeId(map) !== undefined ? undefined : (map as { [AT]?: Place })[AT];
}
