/**
 * Where less wood is left than a step: the cells of a field as areas, for a map. Edges run along the sides of cells, with the
 * steps of a slanting edge cut across.
 */
import type { Region } from '../polygon.ts';
import type { Field } from './field.ts';
import type { Grid } from './grid.ts';

/** All cells of the body with less than that over them, as rings to be filled by the even-odd rule. mm. */
export function thinnerThan({ grid, least }: Field, mm: number): Region {
  return ringsOf(sidesOf(least, mm, grid), grid.cols + 1).map((ring) =>
    Float64Array.from(
      straightened(ring).flatMap(([i, j]) => [(grid.i0 + i) * grid.cellMm, (grid.j0 + j) * grid.cellMm]),
    ),
  );
}

type Corner = readonly [i: number, j: number];

/** Sides of cells between in and out, each from one corner to the next, what is in on the left. By where they start. */
function sidesOf(least: Float64Array, mm: number, { cols, rows }: Grid): Map<number, number[]> {
  const sides = new Map<number, number[]>();
  const key = (i: number, j: number): number => j * (cols + 1) + i;
  const add = (i0: number, j0: number, i1: number, j1: number): void => {
    const from = key(i0, j0);
    const there = sides.get(from);
    if (there) there.push(key(i1, j1));
    else sides.set(from, [key(i1, j1)]);
  };
  for (let row = 0, cell = 0; row < rows; row++) {
    for (let col = 0; col < cols; col++, cell++) {
      // NaN, of a cell outside the outline, is not less.
      if (!(least[cell]! < mm)) continue;
      if (row === 0 || !(least[cell - cols]! < mm)) add(col, row, col + 1, row);
      if (col === cols - 1 || !(least[cell + 1]! < mm)) add(col + 1, row, col + 1, row + 1);
      if (row === rows - 1 || !(least[cell + cols]! < mm)) add(col + 1, row + 1, col, row + 1);
      if (col === 0 || !(least[cell - 1]! < mm)) add(col, row + 1, col, row);
    }
  }
  return sides;
}

/** Sides joined end to end until they close. */
function ringsOf(sides: Map<number, number[]>, width: number): Corner[][] {
  const rings: Corner[][] = [];
  for (const start of sides.keys()) {
    for (let at = sides.get(start)?.pop(); at !== undefined; at = sides.get(start)?.pop()) {
      const ring: Corner[] = [[start % width, Math.floor(start / width)]];
      while (at !== undefined && at !== start) {
        ring.push([at % width, Math.floor(at / width)]);
        at = sides.get(at)!.pop();
      }
      rings.push(ring);
    }
  }
  return rings;
}

/** Middles of the sides in place of the corners: a flight of steps becomes a slope. What lies in one line becomes one piece. */
function straightened(ring: readonly Corner[]): readonly Corner[] {
  const middles = ring.map(([i, j], k): Corner => {
    const [i1, j1] = ring[(k + 1) % ring.length]!;
    return [(i + i1) / 2, (j + j1) / 2];
  });
  return middles.filter(([i, j], k) => {
    const [pi, pj] = middles[(k + middles.length - 1) % middles.length]!;
    const [ni, nj] = middles[(k + 1) % middles.length]!;
    return (i - pi) * (nj - j) !== (j - pj) * (ni - i);
  });
}
