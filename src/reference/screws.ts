/**
 * Wood screws by their gauge: shank, root of the thread, and the lead hole a wood takes.
 *
 * Shank: ASME B18.6.1, basic diameter D = 0.060 + 0.013·N in; its table governs over the formula. Root: NDS, appendix L, table L3,
 * from memory, from gauge 6 on. The USDA Wood Handbook, chapter 8, has the root average about two-thirds of the shank instead,
 * which is a fifth less than the NDS table says: which of the two was used is always shown.
 *
 * Lead holes: NDS, wood screws (now 12.1.5), as printed in a civil engineering handbook. Against withdrawal: specific gravity over
 * 0.6, 90 % of the root; over 0.5, 70 %; at or below 0.5 none is required. Under a load from the side, for the thread: over
 * 0.6, the root; else 7/8 of it; for the shank: over 0.6, the shank; else 7/8 of it. Sources differ on whether 0.6 itself counts
 * as over.
 */
import type { Certainty } from './certainty.ts';

export interface ScrewRow {
  /** in. */
  readonly shankIn: number;
  /** in; nothing where the table has no row. */
  readonly rootIn: number | undefined;
}

export const screws: Readonly<Record<number, ScrewRow>> = {
  4: { shankIn: 0.112, rootIn: undefined },
  6: { shankIn: 0.138, rootIn: 0.113 },
  8: { shankIn: 0.164, rootIn: 0.131 },
  10: { shankIn: 0.19, rootIn: 0.152 },
};

/** in; to check the table by. */
export const shankByFormula = (gauge: number): number => 0.06 + 0.013 * gauge;

export const SHANK_SOURCE = 'ASME B18.6.1: basic shank diameter of wood screws';
export const SHANK_CERTAINTY: Certainty = 'seen+recomputed';
export const ROOT_SOURCE = 'NDS, appendix L, table L3: root diameter of wood screws';
export const ROOT_CERTAINTY: Certainty = 'memory';
export const TWO_THIRDS = 2 / 3;
export const TWO_THIRDS_SOURCE =
  'USDA Wood Handbook, FPL-GTR-190 (2010), chapter 8: root about two-thirds of the shank';
export const TWO_THIRDS_CERTAINTY: Certainty = 'seen';
export const LEAD_SOURCE = 'NDS, wood screws, 12.1.5 (11.1 before 2015): lead holes by specific gravity';

export interface Lead {
  /** Least pilot as a share of the root: against splitting and withdrawal; 0 where none is required. */
  readonly least: number;
  /** Widest pilot for the thread as a share of the root. */
  readonly most: number;
  /** Hole for a smooth shank as a share of the shank. */
  readonly shank: number;
}

/** By specific gravity on ovendry weight and volume. */
export function leadOf(gravity: number): Lead {
  if (gravity > 0.6) return { least: 0.9, most: 1, shank: 1 };
  return { least: gravity > 0.5 ? 0.7 : 0, most: 7 / 8, shank: 7 / 8 };
}

/** Moisture the densities are given at, per cent. */
const MOISTURE = 12;

/**
 * Specific gravity on an ovendry basis from density at 12 % moisture, kg/m³: ρ = 1000·G/(1 + 0.009·G·M)·(1 + M/100), after the
 * NDS, solved for G.
 */
export function ovendryGravity(density: number): number {
  const at12 = density / (1000 * (1 + MOISTURE / 100));
  return at12 / (1 - 0.009 * MOISTURE * at12);
}
