/**
 * Highest pressure a joint bears before its wood is crushed, by density. The two ends: USDA Wood Handbook, FPL-GTR-190 (2010),
 * chapter 10, p. 10-17: 700 kPa (100 lb/in²) for low-density woods, up to 1700 kPa (247 lb/in²) for the highest-density woods.
 * The handbook names no densities and no line between: that low means 400 kg/m³ and highest 800 kg/m³ at 12 % moisture, and
 * that the straight line lies between, is our own reading. A plant that knows better gives its own pressure with the species.
 */
import type { Certainty } from './certainty.ts';

export interface PressureEnd {
  /** kg/m³ at 12 % moisture; our own reading. */
  readonly density: number;
  /** kPa, as published. */
  readonly pressureKPa: number;
}

export const LOW_DENSITY: PressureEnd = { density: 400, pressureKPa: 700 };
export const HIGHEST_DENSITY: PressureEnd = { density: 800, pressureKPa: 1700 };

export const ENDS_SOURCE =
  'USDA Wood Handbook, FPL-GTR-190 (2010), chapter 10, p. 10-17: joint pressure for low-density and highest-density woods';
export const ENDS_CERTAINTY: Certainty = 'memory';

export const LINE_SOURCE =
  'which density each end stands for, and the straight line between: our own reading, no source';
export const LINE_CERTAINTY: Certainty = 'unverified';

/** How far a density, kg/m³, lies from the one end to the other: 0 to 1, beyond either end no further. */
export const alongDensity = (density: number): number =>
  Math.min(1, Math.max(0, (density - LOW_DENSITY.density) / (HIGHEST_DENSITY.density - LOW_DENSITY.density)));
