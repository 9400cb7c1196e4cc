/**
 * Square cells over the plan. Cells lie on one lattice whatever the body: cell (i, j) spans i·h … (i + 1)·h, so moving a
 * body by whole cells, or mirroring it, moves its cells along and changes no value in them.
 */
import type { Bounds } from '../measure.ts';

/** Default cell, mm. */
export const CELL_MM = 1;

export interface Grid {
  readonly cellMm: number;
  /** Lattice index of the first column and row. */
  readonly i0: number;
  readonly j0: number;
  readonly cols: number;
  readonly rows: number;
}

/** The cells that a box touches. */
export function gridOver({ minX, minY, maxX, maxY }: Bounds, cellMm = CELL_MM): Grid {
  const i0 = Math.floor(minX / cellMm);
  const j0 = Math.floor(minY / cellMm);
  return { cellMm, i0, j0, cols: Math.ceil(maxX / cellMm) - i0, rows: Math.ceil(maxY / cellMm) - j0 };
}

export const centreX = ({ cellMm, i0 }: Grid, col: number): number => (i0 + col + 0.5) * cellMm;
export const centreY = ({ cellMm, j0 }: Grid, row: number): number => (j0 + row + 0.5) * cellMm;
