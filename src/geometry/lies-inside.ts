/** Regions inside regions. */
import { regionArea } from './measure.ts';
import { difference } from './offset.ts';
import type { Region } from './polygon.ts';

/** What sticks out is less than the rounding of a drawing, mm². */
const ROUNDING_MM2 = 0.05;

export const liesInside = (inner: Region, outer: Region): boolean =>
  Math.abs(regionArea(difference(inner, outer))) <= ROUNDING_MM2;
