/**
 * The body on a grid: how much wood stands over each cell, after any number of cuts, and the thinnest layer there.
 *
 * Areas are exact (coverage.ts): a pocket that covers part of a cell takes that part. Heights are taken at the middle of the
 * cell, those of a tube at many points of it. The least thickness is that of whatever touches the cell: never more than
 * there is.
 */
import { coverage } from './coverage.ts';
import { CELL_MM, centreX, centreY } from './grid.ts';
import type { Grid } from './grid.ts';
import { faceField } from './face-field.ts';
import type { Solid } from './solid.ts';
import { sums, thinnest } from './stack.ts';
import type { Work } from './take.ts';
import { FACE, take, takeLedges } from './take.ts';

export { FACE } from './take.ts';

/** Volume and its first moments (∫x, ∫y, ∫z), mm³ and mm⁴. */
export interface Mass {
  readonly volumeMm3: number;
  readonly momentMm4: readonly [x: number, y: number, z: number];
}

/** Its mass is that when all is cut. */
export interface Field extends Mass {
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
  /** Of what lies below the plane that was asked about: the back under a glue line. All of it where none was. */
  readonly below: Mass;
}

/** `planeMm`: z of a plane, to know what lies below it. */
export function fieldOf(solid: Solid, cellMm = CELL_MM, planeMm = Infinity): Field {
  const work = shaped(solid, cellMm);
  takeLedges(work, solid);
  const shapedMm3 = massOf(work).volumeMm3;
  const removedMm3 = solid.voids.map((cut, index) => take(work, cut, index));
  const { grid, share } = work;
  const mass = massOf(work);
  const below = planeMm === Infinity ? mass : massOf(work, planeMm);
  return { grid, share, ...leastOf(work), shapedMm3, removedMm3, ...mass, below };
}

/** Both faces, nothing cut yet. */
function shaped(solid: Solid, cellMm: number): Work {
  const { grid, share } = coverage([solid.outline], cellMm);
  const top = faceField(solid.top, grid, share).map((depth) => solid.heightMm - depth);
  const bottom = faceField(solid.back, grid, share);
  const over = new Int16Array(share.length).fill(FACE);
  const under = new Int16Array(share.length).fill(FACE);
  return { grid, share, top, bottom, over, under, stacks: Array<undefined>(share.length).fill(undefined) };
}

/** Of what is left, up to a height. */
function massOf({ grid, share, top, bottom, stacks }: Work, upTo = Infinity): Mass {
  let [volume, mx, my, mz] = [0, 0, 0, 0];
  for (let row = 0, cell = 0; row < grid.rows; row++) {
    const y = centreY(grid, row);
    for (let col = 0; col < grid.cols; col++, cell++) {
      if (share[cell] === 0) continue;
      const there = stacks[cell];
      const high = Math.min(top[cell]!, upTo);
      let mm = share[cell]! * Math.max(0, high - bottom[cell]!);
      let moment = (mm * (high + bottom[cell]!)) / 2;
      if (there) ({ mm, momentMm2: moment } = sums(there, upTo));
      volume += mm;
      mx += mm * centreX(grid, col);
      my += mm * y;
      mz += moment;
    }
  }
  const area = grid.cellMm ** 2;
  return { volumeMm3: volume * area, momentMm4: [mx * area, my * area, mz * area] };
}

/** The thinnest layer over each cell, and who bounds it. */
function leastOf({ share, top, bottom, over, under, stacks }: Work): Pick<Field, 'least' | 'over' | 'under'> {
  const least = share.map((part, cell) => (part === 0 ? NaN : Math.max(0, top[cell]! - bottom[cell]!)));
  stacks.forEach((there, cell) => {
    if (there === undefined) return;
    const wood = thinnest(there);
    least[cell] = wood ? wood.high - wood.low : 0;
    if (wood) [over[cell], under[cell]] = [wood.over, wood.under];
  });
  return { least, over, under };
}
