/** Lengths of the drawing, in and out of millimetres. */
import type { Length } from '../units/quantity.ts';

const NM_PER_MM = 1_000_000;
export const NM_PER_M = 1e9;

/** A length computed in mm, held to the nanometre and printed to `decimals` in mm: geometry is good to its chord error, 0.01 mm. */
export const lengthOfMm = (mm: number, decimals = 1): Length => ({
  kind: 'length',
  value: Math.round(mm * NM_PER_MM),
  unit: 'mm',
  decimals,
});

export const toMm = (q: Length): number => q.value / NM_PER_MM;
