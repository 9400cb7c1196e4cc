/** Coordinates of a drawing: rounded, so that the same body is the same text everywhere. `+ 0` makes minus zero zero. */

/** To 0.01 mm of the body. */
export const hundredth = (mm: number): number => Math.round(mm * 100) / 100 + 0;

/** To 0.1 mm: of a map, whose edges are known to its cells. */
export const tenth = (mm: number): number => Math.round(mm * 10) / 10 + 0;
