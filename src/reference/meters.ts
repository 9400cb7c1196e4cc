/**
 * Moisture meters: where they read reliably, and how a reading moves with the wood's temperature.
 * Source: USDA Wood Handbook, FPL-GTR-190 (2010), chapter 4. A meter's own manual comes first.
 */
export const METER_SOURCE = 'USDA Wood Handbook, FPL-GTR-190 (2010), chapter 4';

/** Shares of 1. */
export const meterRanges = {
  resistance: { low: 0.06, high: 0.3 },
  dielectric: { low: 0.04, high: 0.3 },
} as const;

/** A reading is about 0.5 % too high for each 5.6 °C (10 °F) the wood is warmer than the meter was calibrated at. */
export const METER_PER_STEP = 0.005;
export const METER_STEP_K = 50 / 9;
