/**
 * Specific gravity of species at 12 % moisture, on volume at that moisture, and the density that follows:
 * ρ = 1000 kg/m³ · G · (1 + 12/100).
 * Source: USDA Wood Handbook, FPL-GTR-190 (2010), table 4-3 and chapter 4. A board may lie a tenth to either side.
 */
import type { Certainty } from './certainty.ts';

export interface DensityRow {
  readonly gravity12: number;
  readonly certainty: Certainty;
}

export const DENSITY_SOURCE = 'USDA Wood Handbook, FPL-GTR-190 (2010), chapter 4: specific gravity at 12 % moisture';

export const densities: Readonly<Record<string, DensityRow>> = {
  'sugar-maple': { gravity12: 0.63, certainty: 'seen' },
  'red-maple': { gravity12: 0.54, certainty: 'seen' },
  'bigleaf-maple': { gravity12: 0.48, certainty: 'seen' },
  'black-walnut': { gravity12: 0.55, certainty: 'seen' },
  'white-ash': { gravity12: 0.6, certainty: 'seen' },
  'red-alder': { gravity12: 0.41, certainty: 'seen' },
  basswood: { gravity12: 0.37, certainty: 'seen' },
  'black-cherry': { gravity12: 0.5, certainty: 'seen' },
  'yellow-poplar': { gravity12: 0.42, certainty: 'seen' },
  'sitka-spruce': { gravity12: 0.4, certainty: 'memory' },
};

/** kg/m³ at 12 %. */
export const densityAt12 = ({ gravity12 }: DensityRow): number => 1000 * gravity12 * 1.12;
