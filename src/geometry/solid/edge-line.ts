/**
 * A line on the plan that heights are counted from: the outline, or a stretch of it. Its distance at a point is exact; each
 * small square of the plan that is asked about keeps how near the line comes to it at the least, and the few pieces that can be
 * the nearest to a point in it.
 */

/** Side of such a square, mm. */
const SQUARE_MM = 8;

export interface EdgeLine {
  /** x0, y0, x1, y1, … in mm. */
  readonly points: Float64Array;
  readonly closed: boolean;
  /** mm from the point to the line, never negative. Beyond `reachMm`, any number above that: most of a face lies beyond. */
  readonly at: (x: number, y: number, reachMm?: number) => number;
}

/** At least one point; one that repeats the point before it is dropped. */
export function edgeLine(line: Float64Array, closed: boolean): EdgeLine {
  const points = withoutRepeats(line, closed);
  const pieces = piecesOf(points, closed);
  const squares = new Map<number, Square>();
  return {
    points,
    closed,
    at: (x, y, reachMm = Infinity) => {
      const [col, row] = [Math.floor(x / SQUARE_MM), Math.floor(y / SQUARE_MM)];
      const key = col * 65_536 + row;
      let square = squares.get(key);
      if (square === undefined) {
        square = squareAbout(pieces, (col + 0.5) * SQUARE_MM, (row + 0.5) * SQUARE_MM);
        squares.set(key, square);
      }
      if (square.clearMm > reachMm) return square.clearMm;
      const near = square.near();
      let least = Infinity;
      for (let i = 0; i < near.length; i += PIECE) least = Math.min(least, squaredTo(near, i, x, y));
      return Math.sqrt(least);
    },
  };
}

function withoutRepeats(line: Float64Array, closed: boolean): Float64Array {
  const isNew = (i: number): boolean => {
    if (i === 0 && !closed) return true;
    const before = (i === 0 ? line.length : i) - 2;
    return before === i || line[i] !== line[before] || line[i + 1] !== line[before + 1];
  };
  return line.filter((_, k) => isNew(k - (k % 2)));
}

/** x, y, dx, dy and 1 / length² of each piece, one after the other. */
const PIECE = 5;

function piecesOf(line: Float64Array, closed: boolean): Float64Array {
  const points = line.length / 2;
  const count = closed ? points : Math.max(1, points - 1);
  const pieces = new Float64Array(count * PIECE);
  for (let i = 0; i < count; i++) {
    const next = (i + 1) % points;
    const [x, y] = [line[2 * i]!, line[2 * i + 1]!];
    const [dx, dy] = [line[2 * next]! - x, line[2 * next + 1]! - y];
    const squared = dx * dx + dy * dy;
    pieces.set([x, y, dx, dy, squared === 0 ? 0 : 1 / squared], PIECE * i);
  }
  return pieces;
}

interface Square {
  /** No point in it is nearer to the line, mm. */
  readonly clearMm: number;
  /** Pieces that can be the nearest to some point of it: all within its diagonal of the nearest. */
  readonly near: () => Float64Array;
}

/** A hair, for rounding. */
const HAIR = 1e-9;

function squareAbout(pieces: Float64Array, x: number, y: number): Square {
  let squared = Infinity;
  for (let i = 0; i < pieces.length; i += PIECE) squared = Math.min(squared, squaredTo(pieces, i, x, y));
  const leastMm = Math.sqrt(squared);
  let near: Float64Array | undefined;
  return {
    clearMm: leastMm * (1 - HAIR) - Math.SQRT1_2 * SQUARE_MM * (1 + HAIR),
    near: () => (near ??= within(pieces, x, y, ((leastMm + Math.SQRT2 * SQUARE_MM) * (1 + HAIR)) ** 2)),
  };
}

/** Pieces no further from a point than the root of `squared`. */
function within(pieces: Float64Array, x: number, y: number, squared: number): Float64Array {
  const kept: number[] = [];
  for (let i = 0; i < pieces.length; i += PIECE) {
    if (squaredTo(pieces, i, x, y) > squared) continue;
    for (let k = i; k < i + PIECE; k++) kept.push(pieces[k]!);
  }
  return Float64Array.from(kept);
}

/** mm² from a point to the piece that starts at `at`: to its nearest end, or square to it. */
function squaredTo(pieces: Float64Array, at: number, x: number, y: number): number {
  const px = x - pieces[at]!;
  const py = y - pieces[at + 1]!;
  const dx = pieces[at + 2]!;
  const dy = pieces[at + 3]!;
  let t = (px * dx + py * dy) * pieces[at + 4]!;
  if (t < 0) t = 0;
  else if (t > 1) t = 1;
  const ex = px - t * dx;
  const ey = py - t * dy;
  return ex * ex + ey * ey;
}
