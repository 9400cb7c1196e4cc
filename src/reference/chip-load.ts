/**
 * Chip load of router bits in hardwood by their diameter: a generic table that trade pages on routing print in this form. No
 * maker stands behind it, and it knows neither wood nor cutter: a guide for a question, never a setting. A plant gives what
 * the maker of a cutter says, or what trials showed.
 */
import type { Certainty } from './certainty.ts';

/** Diameter and chip load, inches. The last row is for 3/4 in and more. */
const ROWS: readonly (readonly [diameterIn: number, lowIn: number, highIn: number])[] = [
  [1 / 4, 0.003, 0.005],
  [1 / 2, 0.004, 0.008],
  [3 / 4, 0.006, 0.012],
];

export const CHIP_LOAD_SOURCE =
  'generic chip load of router bits in hardwood by diameter, as trade pages print it; between two diameters the straight line, our own reading';
export const CHIP_LOAD_CERTAINTY: Certainty = 'seen';

/** Least and most, inches. Nothing below the smallest diameter that is printed; above the largest, its row. */
export function chipLoadBandIn(diameterIn: number): { readonly low: number; readonly high: number } | undefined {
  const [first, last] = [ROWS[0]!, ROWS.at(-1)!];
  if (diameterIn < first[0]) return undefined;
  if (diameterIn >= last[0]) return { low: last[1], high: last[2] };
  const after = ROWS.findIndex(([diameter]) => diameter > diameterIn);
  const [a, b] = [ROWS[after - 1]!, ROWS[after]!];
  const t = (diameterIn - a[0]) / (b[0] - a[0]);
  return { low: a[1] + t * (b[1] - a[1]), high: a[2] + t * (b[2] - a[2]) };
}
