/** A cutting time as people read it: short ones in seconds, long ones in minutes. */
import type { Quantity } from '../units/quantity.ts';

const LONG_S = 100;

export const cuttingTime = (value: number): Quantity<'time'> =>
  value < LONG_S ? { kind: 'time', value, unit: 's', decimals: 0 } : { kind: 'time', value, unit: 'min', decimals: 1 };
