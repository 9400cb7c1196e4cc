/** The cells a tube runs through, and what it takes of each: a round bar is too curved for one look at the middle. */
import type { Grid } from './grid.ts';
import { centreX, centreY } from './grid.ts';
import type { Span, Tube } from './solid.ts';
import { tubeSpans } from './solid.ts';
import type { Bite } from './stack.ts';

/** A cell is taken in so many parts along each side, and each looked at so often. */
const PARTS = 2;
const LOOKS = 4;

/** Calls `visit` for each cell of the grid that the tube takes something of. */
export function forTube(tube: Tube, grid: Grid, visit: (cell: number, bites: readonly Bite[]) => void): void {
  const { from, to, radiusMm } = tube;
  const { cellMm } = grid;
  const spanAt = tubeSpans(tube);
  const reach = (a: number, b: number, first: number, count: number): readonly [number, number] => [
    Math.max(0, Math.floor((Math.min(a, b) - radiusMm) / cellMm) - first),
    Math.min(count - 1, Math.floor((Math.max(a, b) + radiusMm) / cellMm) - first),
  ];
  const [col0, col1] = reach(from.xMm, to.xMm, grid.i0, grid.cols);
  const [row0, row1] = reach(from.yMm, to.yMm, grid.j0, grid.rows);
  for (let row = row0; row <= row1; row++) {
    for (let col = col0; col <= col1; col++) {
      const [x, y] = [centreX(grid, col), centreY(grid, row)];
      if (besideTube(tube, x, y, cellMm)) continue;
      const bites = bitesOf(spanAt, x, y, cellMm);
      if (bites.length > 0) visit(row * grid.cols + col, bites);
    }
  }
}

/** Too far from its axis in plan for any point of the cell to be in it. */
function besideTube({ from, to, radiusMm }: Tube, x: number, y: number, cellMm: number): boolean {
  const [dx, dy] = [to.xMm - from.xMm, to.yMm - from.yMm];
  const away = Math.abs((x - from.xMm) * dy - (y - from.yMm) * dx);
  return away > (radiusMm + cellMm * Math.SQRT1_2) * Math.hypot(dx, dy);
}

type SpanAt = (x: number, y: number) => Span | undefined;

function bitesOf(spanAt: SpanAt, x: number, y: number, cellMm: number): readonly Bite[] {
  const sizeMm = cellMm / PARTS;
  const bites: Bite[] = [];
  for (let i = 0; i < PARTS ** 2; i++) {
    const across = ((i % PARTS) + 0.5 - PARTS / 2) * sizeMm;
    const up = (Math.floor(i / PARTS) + 0.5 - PARTS / 2) * sizeMm;
    const bite = biteOf(spanAt, x + across, y + up, sizeMm);
    if (bite) bites.push({ part: bite.part / PARTS ** 2, span: bite.span });
  }
  return bites;
}

/**
 * Of a square about (x, y): from the lowest to the highest that is taken at any look, and as much of the square as has their
 * volume. The section of a bar of 2 mm is so found to 0.5 %: the middle rule errs at a circle's ends by a share of
 * (step / radius)^1.5.
 */
function biteOf(spanAt: SpanAt, x: number, y: number, sizeMm: number): Bite | undefined {
  let [low, high, sum] = [Infinity, -Infinity, 0];
  for (let i = 0; i < LOOKS ** 2; i++) {
    const across = ((i % LOOKS) + 0.5) / LOOKS - 0.5;
    const up = (Math.floor(i / LOOKS) + 0.5) / LOOKS - 0.5;
    const span = spanAt(x + across * sizeMm, y + up * sizeMm);
    if (span === undefined) continue;
    low = Math.min(low, span.low);
    high = Math.max(high, span.high);
    sum += span.high - span.low;
  }
  return sum === 0 ? undefined : { part: sum / LOOKS ** 2 / (high - low), span: { low, high } };
}
