/**
 * Distance from a line to the middle of every cell within reach of it, on the inside.
 *
 * The point of the edge nearest to a point inside lies square to it on some piece, or at a corner that points inward. So each
 * piece need only be asked by the cells of the strip that stands square on it, and each such corner by those of its wedge:
 * the least answer a cell gets is exact. That is one or two questions a cell instead of one for every piece.
 */
import type { EdgeLine } from './edge-line.ts';
import type { Grid } from './grid.ts';

/** mm; Infinity beyond the reach. A closed line runs counter-clockwise; of an open one both sides and its ends are asked. */
export function distanceBand({ points, closed }: EdgeLine, reachMm: number, grid: Grid): Float64Array {
  const band: Band = { grid, squared: new Float64Array(grid.cols * grid.rows).fill(Infinity), reachMm };
  const count = points.length / 2;
  const at = (i: number): Spot => {
    const k = ((i + count) % count) * 2;
    return { x: points[k]!, y: points[k + 1]! };
  };
  for (let i = 0; i < (closed ? count : count - 1); i++) {
    strip(band, at(i), at(i + 1), 1);
    if (!closed) strip(band, at(i), at(i + 1), -1);
  }
  for (let i = closed ? 0 : 1; i < (closed ? count : count - 1); i++) wedge(band, at(i - 1), at(i), at(i + 1), closed);
  if (!closed) {
    disc(band, at(0));
    disc(band, at(count - 1));
  }
  return rooted(band.squared);
}

/** Square roots, in their place: nobody else has seen it yet. */
function rooted(squared: Float64Array): Float64Array {
  for (let cell = 0; cell < squared.length; cell++) {
    if (squared[cell]! < Infinity) squared[cell] = Math.sqrt(squared[cell]!);
  }
  return squared;
}

interface Band {
  readonly grid: Grid;
  readonly squared: Float64Array;
  readonly reachMm: number;
}

interface Spot {
  readonly x: number;
  readonly y: number;
}

/** How far a shape is drawn beyond itself, cells: asking too often does no harm. */
const MARGIN = 1;

/** The cells square to a piece, on its left (side 1) or right (−1). */
function strip(band: Band, a: Spot, b: Spot, side: 1 | -1): void {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const length = Math.sqrt(dx * dx + dy * dy);
  if (length === 0) return;
  const margin = MARGIN * band.grid.cellMm;
  // A little before, behind and below the piece, to its reach above it.
  const [ux, uy] = [(dx / length) * margin, (dy / length) * margin];
  const [nx, ny] = [(-side * dy) / length, (side * dx) / length];
  const corner = (p: Spot, along: number, up: number): Spot => ({
    x: p.x + along * ux + up * nx,
    y: p.y + along * uy + up * ny,
  });
  const up = band.reachMm + margin;
  ask(band, [corner(a, -1, -margin), corner(b, 1, -margin), corner(b, 1, up), corner(a, -1, up)], a, b);
}

/** The cells nearest to a corner that points inward: between the strips of both its pieces. */
function wedge(band: Band, before: Spot, corner: Spot, after: Spot, leftOnly: boolean): void {
  const [ax, ay] = [corner.x - before.x, corner.y - before.y];
  const [bx, by] = [after.x - corner.x, after.y - corner.y];
  const turn = ax * by - ay * bx;
  // Straight back along itself: all round the point.
  if (turn === 0 && ax * bx + ay * by < 0) return disc(band, corner);
  if (leftOnly ? turn >= 0 : turn === 0) return;
  const side = turn < 0 ? 1 : -1;
  const up = band.reachMm + MARGIN * band.grid.cellMm;
  const out = (dx: number, dy: number): Spot => {
    const scale = (side * up) / Math.hypot(dx, dy);
    return { x: corner.x - dy * scale, y: corner.y + dx * scale };
  };
  const [from, to] = [out(ax, ay), out(bx, by)];
  // The arc between them bulges beyond the straight line from one to the other.
  const [mx, my] = [(from.x + to.x) / 2 - corner.x, (from.y + to.y) / 2 - corner.y];
  const half = Math.hypot(mx, my);
  if (half < up / 2) return disc(band, corner);
  const bulge = (up * up) / (half * half);
  const middle = { x: corner.x + mx * bulge, y: corner.y + my * bulge };
  ask(band, [corner, from, middle, to], corner, corner);
}

function disc(band: Band, middle: Spot): void {
  const r = band.reachMm + band.grid.cellMm;
  const { x, y } = middle;
  const square = [
    { x: x - r, y: y - r },
    { x: x + r, y: y - r },
    { x: x + r, y: y + r },
    { x: x - r, y: y + r },
  ];
  ask(band, square, middle, middle);
}

/** Rows of cells whose middle lies in a convex shape ask the piece from a to b, which may be a point. */
function ask(band: Band, shape: readonly Spot[], a: Spot, b: Spot): void {
  const { cellMm, j0, rows } = band.grid;
  let [low, high] = [Infinity, -Infinity];
  for (const { y } of shape) {
    if (y < low) low = y;
    if (y > high) high = y;
  }
  const last = Math.min(rows - 1, Math.ceil(high / cellMm - 0.5) - j0);
  for (let row = Math.max(0, Math.floor(low / cellMm - 0.5) - j0); row <= last; row++) {
    const y = (j0 + row + 0.5) * cellMm;
    let left = Infinity;
    let right = -Infinity;
    for (let i = 0; i < shape.length; i++) {
      const p = shape[i]!;
      const q = shape[i + 1 === shape.length ? 0 : i + 1]!;
      if (p.y > y === q.y > y) continue;
      const x = p.x + ((y - p.y) * (q.x - p.x)) / (q.y - p.y);
      if (x < left) left = x;
      if (x > right) right = x;
    }
    if (left <= right) askRow(band, row, left, right, a, b);
  }
}

/** Cells of one row from x = left to right, or within a cell beside it. All sums stand in one loop: most of the time goes here. */
function askRow({ grid, squared }: Band, row: number, left: number, right: number, a: Spot, b: Spot): void {
  const { cellMm, i0, j0, cols } = grid;
  const first = Math.max(0, Math.floor(left / cellMm - 0.5) - i0);
  const end = Math.min(cols - 1, Math.ceil(right / cellMm - 0.5) - i0);
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const length = dx * dx + dy * dy;
  const py = (j0 + row + 0.5) * cellMm - a.y;
  for (let col = first, cell = row * cols + first; col <= end; col++, cell++) {
    const px = (i0 + col + 0.5) * cellMm - a.x;
    let t = length === 0 ? 0 : (px * dx + py * dy) / length;
    if (t < 0) t = 0;
    else if (t > 1) t = 1;
    const ex = px - t * dx;
    const ey = py - t * dy;
    const away = ex * ex + ey * ey;
    if (away < squared[cell]!) squared[cell] = away;
  }
}
