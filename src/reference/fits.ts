/**
 * Limit deviations of holes and pins by fit class, for the diameters location pins come in.
 * Source: ISO 286-2, tables of H7, H8 and h6; g6 from memory, and confirmed by its formula −2.5·D^0.34 µm of ISO 286-1. Of h6
 * one trade page prints −10/−12 µm; the standard's IT grade and all other tables give −9/−11.
 */
import type { Certainty } from './certainty.ts';

export type FitClass = 'H7' | 'H8' | 'h6' | 'g6';

/** Upper and lower deviation, µm. */
type Deviations = readonly [upper: number, lower: number];

export interface FitRow {
  /** Diameters over this, mm. */
  readonly over: number;
  /** And up to this, mm. */
  readonly to: number;
  readonly deviations: Readonly<Record<FitClass, Deviations>>;
}

export const fits: readonly FitRow[] = [
  { over: 6, to: 10, deviations: { H7: [15, 0], H8: [22, 0], h6: [0, -9], g6: [-5, -14] } },
  { over: 10, to: 18, deviations: { H7: [18, 0], H8: [27, 0], h6: [0, -11], g6: [-6, -17] } },
];

export const FITS_SOURCE = 'ISO 286-2: limit deviations for holes and shafts';

export const fitCertainty: Readonly<Record<FitClass, Certainty>> = {
  H7: 'seen',
  H8: 'seen',
  h6: 'seen',
  g6: 'memory+recomputed',
};

/** Of a nominal diameter, mm; undefined outside of the rows. */
export const deviationsOf = (fit: FitClass, diameterMm: number): Deviations | undefined =>
  fits.find(({ over, to }) => diameterMm > over && diameterMm <= to)?.deviations[fit];
