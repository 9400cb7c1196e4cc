/** Passes it takes to remove so much. */
import type { Length, Quantity } from '../units/quantity.ts';

/** Most to take off (nm) ÷ the least the machine is sure to be able to in one pass, rounded up; at least `fewest`. */
export const passesFor = (mostNm: number, perPass: Length, fewest = 1): Quantity<'count'> => ({
  kind: 'count',
  value: Math.max(fewest, Math.ceil(mostNm / (perPass.low ?? perPass.value))),
  unit: '',
  decimals: 0,
});
