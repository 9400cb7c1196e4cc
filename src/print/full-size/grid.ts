/**
 * How a picture larger than the paper is divided: cells side by side without a gap, and round each a strip of its
 * neighbours, so that every line is seen on both sides of a cut. All in millimetres of the picture, y downward.
 */
import { union, type Box, type Point } from '../drawing/paper.ts';

/** Tiles that lie beside each other share a strip this wide. */
export const OVERLAP_MM = 11;

export interface Tile {
  /** A row by its letter, the neck's first, and a column by its number: `B2`. */
  readonly name: string;
  readonly row: string;
  readonly column: string;
  /** Up to where it is cut. */
  readonly cell: Box;
  /** What is printed of the picture. */
  readonly window: Box;
  readonly joins: Readonly<Partial<Record<Side, string>>>;
}

export type Side = 'left' | 'right' | 'above' | 'below';

export interface Grid {
  readonly rows: readonly string[];
  readonly columns: readonly string[];
  readonly tiles: readonly Tile[];
  /** All that is printed of the picture. */
  readonly whole: Box;
}

/** `width`, `height`: what a page shows of the picture. */
export function gridOver(box: Box, { width, height }: { readonly width: number; readonly height: number }): Grid {
  const xs = divided(box.left, box.right, width);
  const ys = divided(box.top, box.bottom, height);
  const columns = xs.slice(1).map((_, i) => String(i + 1));
  const rows = ys.slice(1).map((_, i) => String.fromCharCode(65 + i));
  const name = (row: number, column: number): string | undefined =>
    rows[row] === undefined || columns[column] === undefined ? undefined : `${rows[row]}${columns[column]}`;
  const tiles = rows.flatMap((row, r) =>
    columns.map((column, c): Tile => {
      const cell = { left: xs[c]!, right: xs[c + 1]!, top: ys[r]!, bottom: ys[r + 1]! };
      const beside = { left: name(r, c - 1), right: name(r, c + 1), above: name(r - 1, c), below: name(r + 1, c) };
      const joins = Object.fromEntries(Object.entries(beside).filter(([, tile]) => tile !== undefined));
      return { name: `${row}${column}`, row, column, cell, window: windowOf(cell), joins };
    }),
  );
  return { rows, columns, tiles, whole: union(tiles.map(({ window }) => window)) };
}

const windowOf = ({ left, top, right, bottom }: Box): Box => ({
  left: left - OVERLAP_MM / 2,
  top: top - OVERLAP_MM / 2,
  right: right + OVERLAP_MM / 2,
  bottom: bottom + OVERLAP_MM / 2,
});

/** The corners of a cell: of those it shares with a neighbour, each tile has the same. */
export const cornersOf = ({ left, top, right, bottom }: Box): readonly Point[] => [
  { x: left, y: top },
  { x: right, y: top },
  { x: left, y: bottom },
  { x: right, y: bottom },
];

/**
 * Where the cells of one direction begin and end: as few as cover it, and of the room left over so much on either side that
 * their cuts keep off the axis at zero, which is to be seen whole on one tile.
 */
function divided(low: number, high: number, shown: number): number[] {
  const cell = shown - OVERLAP_MM;
  const count = Math.max(1, Math.ceil((high - low - OVERLAP_MM) / cell));
  const spare = count * cell + OVERLAP_MM - (high - low);
  const edges = [0.5, 0, 1].map((share) => {
    const first = hundredth(low - spare * share + OVERLAP_MM / 2);
    return Array.from({ length: count + 1 }, (_, i) => hundredth(first + i * cell));
  });
  const off = (lines: readonly number[]): number => Math.min(...lines.slice(1, -1).map(Math.abs));
  return edges.reduce((best, other) => (off(other) > off(best) ? other : best));
}

const hundredth = (mm: number): number => Math.round(mm * 100) / 100;
