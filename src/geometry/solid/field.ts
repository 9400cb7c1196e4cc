/**
 * The body on a grid: how much wood stands over each cell, after any number of cuts, and the thinnest layer there.
 *
 * Two answers are kept for each cell. For volumes, the mean over the cell: a pocket that covers part of it takes that part.
 * For the least thickness, the deepest of whatever touches the cell: never more than there is. Areas are exact (coverage.ts);
 * heights are taken at the middle of the cell.
 */
import { bounds } from '../measure.ts';
import { coverage } from './coverage.ts';
import { faceField } from './face-field.ts';
import type { Grid } from './grid.ts';
import { CELL_MM, centreX, centreY } from './grid.ts';
import type { Pocket, Solid, Tube, Void } from './solid.ts';
import { floorAt, tubeSpan } from './solid.ts';

/** Stands in `over` and `under` for the face itself. */
export const FACE = -1;

export interface Field {
  readonly grid: Grid;
  /** Share of the cell inside the outline, 0 … 1. */
  readonly share: Float64Array;
  /** Thinnest layer of wood over the cell, mm; 0 where nothing is left, NaN outside the outline. */
  readonly least: Float64Array;
  /** Index in `solid.voids` of what bounds that layer above and below, or FACE. */
  readonly over: Int16Array;
  readonly under: Int16Array;
  /** Volume of the body with its faces shaped and nothing else cut, mm³. */
  readonly shapedMm3: number;
  /** Taken by each void after the ones before it, in the order of `solid.voids`, mm³. */
  readonly removedMm3: readonly number[];
  /** Volume and its first moments (∫x, ∫y, ∫z) when all is cut, mm³ and mm⁴. */
  readonly volumeMm3: number;
  readonly momentMm4: readonly [x: number, y: number, z: number];
}

/** A hollow inside: neither face sees it. */
interface Inner {
  readonly low: number;
  readonly high: number;
  readonly share: number;
  readonly by: number;
}

/** What the passes write to; nobody sees it before they are done. */
interface Work {
  readonly grid: Grid;
  readonly share: Float64Array;
  /** Mean height of both faces over the wooded part of the cell. */
  readonly top: Float64Array;
  readonly bottom: Float64Array;
  /** Deepest from either side in any part of the cell, and by what. */
  readonly low: Float64Array;
  readonly high: Float64Array;
  readonly over: Int16Array;
  readonly under: Int16Array;
  readonly inner: Map<number, Inner[]>;
}

export function fieldOf(solid: Solid, cellMm = CELL_MM): Field {
  const work = shaped(solid, cellMm);
  const shapedMm3 = volumeOf(work);
  const removedMm3 = solid.voids.map((cut, index) => take(work, cut, index));
  return {
    grid: work.grid,
    share: work.share,
    over: work.over,
    under: work.under,
    least: leastOf(work),
    shapedMm3,
    removedMm3,
    ...massOf(work),
  };
}

/** Both faces, nothing cut yet. */
function shaped(solid: Solid, cellMm: number): Work {
  const { grid, share } = coverage([solid.outline], cellMm);
  const count = share.length;
  const top = faceField(solid.top, grid, share).map((depth) => solid.heightMm - depth);
  const bottom = faceField(solid.back, grid, share);
  const over = new Int16Array(count).fill(FACE);
  const under = new Int16Array(count).fill(FACE);
  return { grid, share, top, bottom, low: bottom.slice(), high: top.slice(), over, under, inner: new Map() };
}

/** Takes a void out of the cells it covers; gives the volume it took. */
function take(work: Work, cut: Void, index: number): number {
  return cut.kind === 'tube' ? takeTube(work, cut, index) : takePocket(work, cut, index);
}

function takePocket(work: Work, pocket: Pocket, index: number): number {
  let taken = 0;
  forCovered(work, pocket, (cell, part, y) => {
    const floor = floorAt(pocket.floor, y);
    if (pocket.opens === 'glue-face')
      taken += hollow(work, cell, { low: floor, high: pocket.roofMm!, share: part, by: index });
    else taken += (pocket.opens === 'top' ? fromTop : fromBack)(work, cell, part, floor, index);
  });
  return taken * cellArea(work);
}

function fromTop(work: Work, cell: number, part: number, floor: number, index: number): number {
  const from = Math.max(floor, work.bottom[cell]!);
  if (floor < work.high[cell]!) [work.high[cell], work.over[cell]] = [floor, index];
  if (from >= work.top[cell]!) return 0;
  const taken = part * wood(work, cell, from, work.top[cell]!);
  work.top[cell] = mix(work.top[cell]!, from, part / work.share[cell]!);
  return taken;
}

function fromBack(work: Work, cell: number, part: number, floor: number, index: number): number {
  const to = Math.min(floor, work.top[cell]!);
  if (floor > work.low[cell]!) [work.low[cell], work.under[cell]] = [floor, index];
  if (to <= work.bottom[cell]!) return 0;
  const taken = part * wood(work, cell, work.bottom[cell]!, to);
  work.bottom[cell] = mix(work.bottom[cell]!, to, part / work.share[cell]!);
  return taken;
}

const mix = (a: number, b: number, part: number): number => a + Math.min(1, part) * (b - a);

function takeTube(work: Work, tube: Tube, index: number): number {
  const { grid } = work;
  const reach = (a: number, b: number, first: number, count: number): [number, number] => [
    Math.max(0, Math.floor((Math.min(a, b) - tube.radiusMm) / grid.cellMm) - first),
    Math.min(count - 1, Math.floor((Math.max(a, b) + tube.radiusMm) / grid.cellMm) - first),
  ];
  const [col0, col1] = reach(tube.from.xMm, tube.to.xMm, grid.i0, grid.cols);
  const [row0, row1] = reach(tube.from.yMm, tube.to.yMm, grid.j0, grid.rows);
  let taken = 0;
  for (let row = row0; row <= row1; row++) {
    for (let col = col0; col <= col1; col++) {
      const cell = row * grid.cols + col;
      const part = work.share[cell]!;
      const span = part === 0 ? undefined : tubeSpan(tube, centreX(grid, col), centreY(grid, row));
      if (span) taken += hollow(work, cell, { ...span, share: part, by: index });
    }
  }
  return taken * cellArea(work);
}

function hollow(work: Work, cell: number, inner: Inner): number {
  const taken =
    inner.share * wood(work, cell, Math.max(inner.low, work.bottom[cell]!), Math.min(inner.high, work.top[cell]!));
  const there = work.inner.get(cell);
  if (there) there.push(inner);
  else work.inner.set(cell, [inner]);
  return taken;
}

/** Wood over one mm² of the cell between two heights: what lies there less hollows. */
function wood(work: Work, cell: number, low: number, high: number): number {
  if (high <= low) return 0;
  const inner = work.inner.get(cell);
  if (!inner) return high - low;
  return woodBetween(inner, low, high, work.share[cell]!);
}

function woodBetween(inner: readonly Inner[], low: number, high: number, share: number): number {
  let left = 0;
  let at = low;
  for (const hole of inner.toSorted((a, b) => a.low - b.low)) {
    const from = Math.min(high, Math.max(at, hole.low));
    const to = Math.min(high, Math.max(from, hole.high));
    left += from - at + (to - from) * (1 - Math.min(1, hole.share / share));
    at = to;
  }
  return left + (high - at);
}

/** Calls `visit` for each cell of the body that the pocket covers, with the part of the cell it covers there. */
function forCovered(work: Work, { region }: Pocket, visit: (cell: number, part: number, y: number) => void): void {
  const box = bounds(region[0]!)!;
  const { grid } = work;
  const apart =
    box.maxX <= grid.i0 * grid.cellMm ||
    box.maxY <= grid.j0 * grid.cellMm ||
    box.minX >= (grid.i0 + grid.cols) * grid.cellMm ||
    box.minY >= (grid.j0 + grid.rows) * grid.cellMm;
  if (apart) return;
  const own = coverage(region, grid.cellMm);
  for (let row = 0; row < own.grid.rows; row++) {
    const bodyRow = own.grid.j0 + row - grid.j0;
    if (bodyRow < 0 || bodyRow >= grid.rows) continue;
    const y = centreY(own.grid, row);
    for (let col = 0; col < own.grid.cols; col++) {
      const bodyCol = own.grid.i0 + col - grid.i0;
      if (bodyCol < 0 || bodyCol >= grid.cols) continue;
      const cell = bodyRow * grid.cols + bodyCol;
      const part = Math.min(own.share[row * own.grid.cols + col]!, work.share[cell]!);
      if (part > 0) visit(cell, part, y);
    }
  }
}

const cellArea = ({ grid }: Work): number => grid.cellMm ** 2;

function volumeOf({ grid, share, top, bottom }: Work): number {
  let sum = 0;
  for (let cell = 0; cell < share.length; cell++) {
    if (share[cell]! > 0) sum += share[cell]! * (top[cell]! - bottom[cell]!);
  }
  return sum * grid.cellMm ** 2;
}

/** Volume and its first moments of what is left. */
function massOf(work: Work): Pick<Field, 'volumeMm3' | 'momentMm4'> {
  const { grid, share, top, bottom, inner } = work;
  let [volume, mx, my, mz] = [0, 0, 0, 0];
  for (let row = 0, cell = 0; row < grid.rows; row++) {
    const y = centreY(grid, row);
    for (let col = 0; col < grid.cols; col++, cell++) {
      if (share[cell] === 0) continue;
      const [low, high] = [bottom[cell]!, top[cell]!];
      let part = share[cell]! * (high - low);
      let moment = part * ((high + low) / 2);
      const holes = inner.get(cell);
      if (holes) {
        const left = share[cell]! * woodBetween(holes, low, high, share[cell]!);
        // The middle of what the hollows take, as if they were one.
        const middle = holes.reduce((sum, hole) => sum + (hole.low + hole.high) / 2, 0) / holes.length;
        moment -= (part - left) * middle;
        part = left;
      }
      volume += part;
      mx += part * centreX(grid, col);
      my += part * y;
      mz += moment;
    }
  }
  const area = grid.cellMm ** 2;
  return { volumeMm3: volume * area, momentMm4: [mx * area, my * area, mz * area] };
}

/** The thinnest layer over each cell; sets who bounds it where that is a hollow. */
function leastOf(work: Work): Float64Array {
  const { share, low, high, over, under, inner } = work;
  const least = new Float64Array(share.length);
  for (let cell = 0; cell < share.length; cell++) {
    least[cell] = share[cell] === 0 ? NaN : Math.max(0, high[cell]! - low[cell]!);
  }
  for (const [cell, holes] of inner) {
    let [at, by] = [low[cell]!, under[cell]!];
    let best = { mm: Infinity, under: by, over: over[cell]! };
    for (const hole of holes.toSorted((a, b) => a.low - b.low)) {
      const mm = Math.min(hole.low, high[cell]!) - at;
      if (mm > 0 && mm < best.mm) best = { mm, under: by, over: hole.low < high[cell]! ? hole.by : over[cell]! };
      if (hole.high > at) [at, by] = [hole.high, hole.by];
    }
    const last = high[cell]! - at;
    if (last > 0 && last < best.mm) best = { mm: last, under: by, over: over[cell]! };
    least[cell] = best.mm === Infinity ? 0 : best.mm;
    [under[cell], over[cell]] = [best.under, best.over];
  }
  return least;
}
