/**
 * How much of each cell a region covers: 0 … 1, exact to rounding for straight edges. Sums of it give areas as exact as the
 * polygon's own, where a yes or no for each cell would be off by half a cell along the edge.
 *
 * Each edge adds, to the cells it runs through, the area between it and their right side, and its height to all cells right
 * of it; running along a row sums that up. Outer rings count up, holes down.
 */
import { bounds } from '../measure.ts';
import type { Polygon, Region } from '../polygon.ts';
import { forEachEdge } from '../polygon.ts';
import type { Grid } from './grid.ts';
import { gridOver } from './grid.ts';

export interface Coverage {
  readonly grid: Grid;
  /** Row by row from the lowest y, 0 … 1. */
  readonly share: Float64Array;
}

export function coverage(region: Region, cellMm: number): Coverage {
  const grid = gridOver(boundsOf(region), cellMm);
  // A column more than there is: an edge on the last line adds its height there.
  const width = grid.cols + 1;
  const sums = new Float64Array(width * grid.rows);
  for (const ring of region) addRing(ring, grid, width, sums);
  const share = new Float64Array(grid.cols * grid.rows);
  for (let row = 0; row < grid.rows; row++) {
    let sum = 0;
    for (let col = 0; col < grid.cols; col++) {
      sum += sums[row * width + col]!;
      // What rounding leaves outside is nothing.
      share[row * grid.cols + col] = Math.abs(sum) < NOTHING ? 0 : sum;
    }
  }
  return { grid, share };
}

const NOTHING = 1e-10;

function boundsOf(region: Region) {
  const boxes = region.map((ring) => bounds(ring)!);
  return {
    minX: Math.min(...boxes.map((box) => box.minX)),
    minY: Math.min(...boxes.map((box) => box.minY)),
    maxX: Math.max(...boxes.map((box) => box.maxX)),
    maxY: Math.max(...boxes.map((box) => box.maxY)),
  };
}

function addRing(ring: Polygon, { cellMm, i0, j0, rows }: Grid, width: number, sums: Float64Array): void {
  forEachEdge(ring, (ax, ay, bx, by) => {
    // Upward edges lie on the right of a region that is walked counter-clockwise: they end it.
    const sign = by > ay ? -1 : 1;
    const up = by > ay;
    const [x0, y0] = [(up ? ax : bx) / cellMm - i0, (up ? ay : by) / cellMm - j0];
    const [x1, y1] = [(up ? bx : ax) / cellMm - i0, (up ? by : ay) / cellMm - j0];
    if (y0 === y1) return;
    const slope = (x1 - x0) / (y1 - y0);
    const last = Math.min(rows - 1, Math.ceil(y1) - 1);
    for (let row = Math.floor(y0); row <= last; row++) {
      const low = Math.max(y0, row);
      const high = Math.min(y1, row + 1);
      const left = low === y0 ? x0 : x0 + (low - y0) * slope;
      const right = high === y1 ? x1 : x0 + (high - y0) * slope;
      addSpan(sums, row * width, Math.min(left, right), Math.max(left, right), sign * (high - low));
    }
  });
}

/** A piece of an edge inside one row, from `left` to `right`, that covers `height` of it. */
function addSpan(sums: Float64Array, start: number, left: number, right: number, height: number): void {
  const first = Math.floor(left);
  if (right <= first + 1) {
    // Within one cell: the mean distance to its right side.
    const mean = first + 1 - (left + right) / 2;
    sums[start + first]! += height * mean;
    sums[start + first + 1]! += height * (1 - mean);
    return;
  }
  const perX = height / (right - left);
  let before = 0;
  let last = 0;
  const end = Math.ceil(right);
  for (let cell = first; cell < end; cell++) {
    const [from, to] = [Math.max(left, cell), Math.min(right, cell + 1)];
    const rise = perX * (to - from);
    const covered = before + rise * (cell + 1 - (from + to) / 2);
    sums[start + cell]! += covered - last;
    before += rise;
    last = covered;
  }
  sums[start + end]! += height - last;
}
