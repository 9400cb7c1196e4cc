/**
 * Holding a body down by vacuum: what the air outside can push at most, and how much more than the cut a hold must bear.
 *
 * Force = pressure difference × area inside the gasket; what it holds sideways is that times the friction.
 */
import type { Certainty } from './certainty.ts';

/** Pa: the standard atmosphere. What a pump pulls is a difference to the air outside: never more than that has. */
export const STANDARD_AIR_PA = 101_325;
export const STANDARD_AIR_SOURCE = 'standard atmosphere, 101 325 Pa: 10th CGPM (1954), Resolution 4';
export const STANDARD_AIR_CERTAINTY: Certainty = 'memory';

/** A safety factor of two to four at least is asked for where a body would be thrown; common practice of the trade, no source. */
export const LEAST_HOLD_FACTOR = 2;
export const LEAST_HOLD_FACTOR_SOURCE =
  'safety factor of a hold by vacuum: 2 to 4 at least; common practice, from memory';

/** N with which the air pushes a body on a zone, by a difference in Pa and an area in m². */
export const holdForce = (differencePa: number, areaM2: number): number => differencePa * areaM2;

export interface Hold {
  /** N down. */
  readonly force: number;
  /** N up, of a cutter that pulls. */
  readonly lift: number;
  readonly friction: number;
  readonly factor: number;
}

/** N sideways that a body may be pushed with: friction × (force − lift) ÷ factor; none where it is lifted off. */
export const heldSideways = ({ force, lift, friction, factor }: Hold): number =>
  (friction * Math.max(0, force - lift)) / factor;
