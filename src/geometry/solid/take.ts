/** Taking voids, and the ledges along the edge, out of the cells they cover. */
import { difference, offset } from '../offset.ts';
import type { Region } from '../polygon.ts';
import { coverage } from './coverage.ts';
import type { Face } from './face.ts';
import type { Grid } from './grid.ts';
import { centreY } from './grid.ts';
import type { Solid, Span, Void } from './solid.ts';
import { pocketSpan } from './solid.ts';
import type { Bite, Stack } from './stack.ts';
import { ALL, cutOut } from './stack.ts';
import { forTube } from './tube-cells.ts';

/** Stands in `over` and `under` for the face itself. */
export const FACE = -1;

/** What the passes write to; nobody sees it before they are done. */
export interface Work {
  readonly grid: Grid;
  readonly share: Float64Array;
  /** Of a cell with one layer all over it, as most have: from where to where, and between whom. */
  readonly top: Float64Array;
  readonly bottom: Float64Array;
  readonly over: Int16Array;
  readonly under: Int16Array;
  /** Of all other cells, by cell. */
  readonly stacks: (readonly Stack[] | undefined)[];
}

/** Takes a void out; gives the volume it took, mm³. */
export function take(work: Work, cut: Void, index: number): number {
  let taken = 0;
  if (cut.kind === 'tube') forTube(cut, work.grid, (cell, bites) => (taken += takeBites(work, cell, bites, index)));
  else {
    forCovered(work, cut.region, (cell, part, y) => {
      taken += takePart(work, cell, { part, span: pocketSpan(cut, y) }, index);
    });
  }
  return taken * work.grid.cellMm ** 2;
}

/** Ledges end in a wall like a pocket: their area is as exact. */
export function takeLedges(work: Work, { top, back, heightMm }: Solid): void {
  takeLedge(work, top, (depth) => ({ low: heightMm - depth, high: Infinity }));
  takeLedge(work, back, (depth) => ({ low: -Infinity, high: depth }));
}

function takeLedge(work: Work, { edge, ledge, riseMm }: Face, spanOf: (depthMm: number) => Span): void {
  if (!ledge) return;
  const whole = [edge.points];
  const span = spanOf(riseMm + ledge.depthMm);
  forCovered(work, difference(whole, offset(whole, -ledge.widthMm)), (cell, part) => {
    takePart(work, cell, { part, span }, FACE);
  });
}

/** mm over the cell's area. All of a cell with one layer, from one side, needs no stack: so it is inside a pocket. */
function takePart(work: Work, cell: number, bite: Bite, by: number): number {
  const [low, high] = [work.bottom[cell]!, work.top[cell]!];
  const { part, span } = bite;
  const inside = span.low > low && span.high < high;
  if (part < ALL || inside || work.stacks[cell] !== undefined) return takeBites(work, cell, [bite], by);
  if (span.low >= high || span.high <= low) return 0;
  if (span.high >= high) {
    const floor = Math.max(low, span.low);
    [work.top[cell], work.over[cell]] = [floor, by];
    return work.share[cell]! * (high - floor);
  }
  [work.bottom[cell], work.under[cell]] = [span.high, by];
  return work.share[cell]! * (span.high - low);
}

function takeBites(work: Work, cell: number, bites: readonly Bite[], by: number): number {
  if (work.share[cell] === 0) return 0;
  const { stacks, takenMm } = cutOut(stacksAt(work, cell), bites, by);
  work.stacks[cell] = stacks;
  return takenMm;
}

function stacksAt({ stacks, share, top, bottom, over, under }: Work, cell: number): readonly Stack[] {
  const there = stacks[cell];
  if (there) return there;
  const [low, high] = [bottom[cell]!, top[cell]!];
  const layers = high > low ? [{ low, high, under: under[cell]!, over: over[cell]! }] : [];
  return [{ share: share[cell]!, layers }];
}

/** Calls `visit` for each cell of the body that a region covers, with the part of its wood that lies in the region. */
function forCovered(
  { grid, share }: Work,
  region: Region,
  visit: (cell: number, part: number, y: number) => void,
): void {
  const own = coverage(region, grid.cellMm);
  const [left, below] = [own.grid.i0 - grid.i0, own.grid.j0 - grid.j0];
  const last = Math.min(own.grid.rows, grid.rows - below);
  const end = Math.min(own.grid.cols, grid.cols - left);
  for (let row = Math.max(0, -below); row < last; row++) {
    const y = centreY(own.grid, row);
    for (let col = Math.max(0, -left); col < end; col++) {
      const cell = (row + below) * grid.cols + col + left;
      const part = Math.min(own.share[row * own.grid.cols + col]!, share[cell]!);
      if (part > 0) visit(cell, part / share[cell]!, y);
    }
  }
}
