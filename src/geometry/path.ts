/** Path syntax to true curves in absolute millimetres (axes.ts). Grammar: path-commands.ts; arcs: arc.ts. */
import { arcFromEnds } from './arc.ts';
import { SAME_POINT_MM, type Point } from './axes.ts';
import { readCommands, type PathCommand, type PathProblem } from './path-commands.ts';
import type { Path, Segment, Subpath } from './segment.ts';

/** Where the pen is while commands are followed. */
interface Pen {
  readonly start: Point;
  readonly at: Point;
  /** Control point that S or T reflects, and for which of the two it holds. */
  readonly reflects?: { readonly by: 'S' | 'T'; readonly control: Point };
}

/**
 * Reads a path: all commands of SVG paths, absolute and relative, repeats, compact numbers. Coordinates in mm.
 * A mistake comes back as the offset of its character, what is wrong and what mends it.
 */
export function parsePath(text: string): { readonly ok: true; readonly path: Path } | PathProblem {
  const read = readCommands(text);
  if (!read.ok) return read;
  const path: Subpath[] = [];
  let pen: Pen = { start: { x: 0, y: 0 }, at: { x: 0, y: 0 } };
  let segments: Segment[] = [];
  const finish = (closed: boolean) => {
    if (segments.length > 0) path.push({ segments, closed });
    segments = [];
  };
  for (const command of read.commands) {
    const letter = command.letter.toUpperCase();
    if (letter === 'M') {
      finish(false);
      const start = pointOf(command, pen, 0);
      pen = { start, at: start };
    } else if (letter === 'Z') {
      if (segments.length > 0 && distance(pen.at, pen.start) > SAME_POINT_MM) {
        segments.push({ kind: 'line', from: pen.at, to: pen.start });
      }
      finish(true);
      pen = { start: pen.start, at: pen.start };
    } else {
      const { segment, next } = draw(letter, command, pen);
      if (segment !== undefined) segments.push(segment);
      pen = next;
    }
  }
  finish(false);
  if (path.length === 0) {
    return {
      ok: false,
      at: 0,
      what: 'the path draws nothing',
      mend: 'add the lines and curves of the outline after M',
    };
  }
  return { ok: true, path };
}

function draw(letter: string, command: PathCommand, pen: Pen): { segment: Segment | undefined; next: Pen } {
  const from = pen.at;
  const ended = (segment: Segment | undefined, to: Point, reflects?: Pen['reflects']) => ({
    segment,
    next: { start: pen.start, at: to, ...(reflects && { reflects }) },
  });
  switch (letter) {
    case 'C':
    case 'S': {
      const short = letter === 'S';
      const control1 = short ? reflected(pen, 'S') : pointOf(command, pen, 0);
      const control2 = pointOf(command, pen, short ? 0 : 2);
      const to = pointOf(command, pen, short ? 2 : 4);
      return ended({ kind: 'cubic', from, control1, control2, to }, to, { by: 'S', control: control2 });
    }
    case 'Q':
    case 'T': {
      const short = letter === 'T';
      const control = short ? reflected(pen, 'T') : pointOf(command, pen, 0);
      const to = pointOf(command, pen, short ? 0 : 2);
      return ended({ kind: 'quadratic', from, control, to }, to, { by: 'T', control });
    }
    case 'A': {
      const [radiusX = 0, radiusY = 0, rotationDeg = 0, large, sweep] = command.numbers;
      const to = pointOf(command, pen, 5);
      const ends = { from, to, radiusX, radiusY, rotationDeg, large: large === 1, sweep: sweep === 1 };
      return ended(arcFromEnds(ends), to);
    }
    default: {
      const to = letter === 'H' || letter === 'V' ? alongAxis(command, pen) : pointOf(command, pen, 0);
      return ended({ kind: 'line', from, to }, to);
    }
  }
}

function pointOf(command: PathCommand, pen: Pen, index: number): Point {
  const x = command.numbers[index]!;
  const y = command.numbers[index + 1]!;
  return isRelative(command) ? { x: pen.at.x + x, y: pen.at.y + y } : { x, y };
}

function alongAxis(command: PathCommand, pen: Pen): Point {
  const value = command.numbers[0]!;
  const { x, y } = pen.at;
  if (command.letter.toUpperCase() === 'H') return { x: isRelative(command) ? x + value : value, y };
  return { x, y: isRelative(command) ? y + value : value };
}

function isRelative(command: PathCommand): boolean {
  return command.letter !== command.letter.toUpperCase();
}

/** The first control point of S or T: the last one of its own kind mirrored at the pen, else the pen itself. */
function reflected(pen: Pen, by: 'S' | 'T'): Point {
  if (pen.reflects?.by !== by) return pen.at;
  return { x: 2 * pen.at.x - pen.reflects.control.x, y: 2 * pen.at.y - pen.reflects.control.y };
}

function distance(a: Point, b: Point): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}
