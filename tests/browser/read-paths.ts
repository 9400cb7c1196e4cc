/** What a page of a PDF draws, read back by a general PDF library: every painted path in mm of the paper, and its clip. */
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** In mm from the upper left corner of the page, y downward. */
export interface PaintedPath {
  /** Ends of its lines and curves, a list for each stretch drawn without lifting the pen. */
  readonly strokes: readonly (readonly (readonly [number, number])[])[];
  readonly box: Box;
  /** What of the page may show it. */
  readonly clip: Box;
  readonly curved: boolean;
  /** Of a stroke; 0 of a filled area. */
  readonly lineWidth: number;
}

export interface DrawnText {
  readonly text: string;
  readonly box: Box;
  /** Turned in degrees, counter-clockwise. */
  readonly turn: number;
  readonly mirrored: boolean;
}

export interface ReadPage {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly paths: readonly PaintedPath[];
  readonly texts: readonly DrawnText[];
}

type Matrix = readonly number[];

const MM_PER_POINT = 25.4 / 72;
const times = ([a, b, c, d, e, f]: Matrix, [g, h, i, j, k, l]: Matrix): Matrix => [
  a! * g! + c! * h!,
  b! * g! + d! * h!,
  a! * i! + c! * j!,
  b! * i! + d! * j!,
  a! * k! + c! * l! + e!,
  b! * k! + d! * l! + f!,
];
const at = ([a, b, c, d, e, f]: Matrix, x: number, y: number): [number, number] => [
  a! * x + c! * y + e!,
  b! * x + d! * y + f!,
];

export async function readPages(bytes: Uint8Array): Promise<readonly ReadPage[]> {
  const doc = await getDocument({ data: Uint8Array.from(bytes), verbosity: 0 }).promise;
  const pages: ReadPage[] = [];
  for (let n = 1; n <= doc.numPages; n++) {
    const page = await doc.getPage(n);
    const [, , width = 0, height = 0] = page.view;
    // From points, y upward, to mm, y downward.
    const paper: Matrix = [MM_PER_POINT, 0, 0, -MM_PER_POINT, 0, height * MM_PER_POINT];
    const { fnArray, argsArray } = await page.getOperatorList();
    const { items } = await page.getTextContent();
    const texts = items.flatMap((item) => ('str' in item && item.str.trim() !== '' ? [textOf(item, paper)] : []));
    const whole = { left: 0, top: 0, right: width * MM_PER_POINT, bottom: height * MM_PER_POINT };
    pages.push({
      widthMm: whole.right,
      heightMm: whole.bottom,
      paths: painted(fnArray, argsArray as readonly unknown[], paper, whole),
      texts,
    });
  }
  await doc.destroy();
  return pages;
}

interface State {
  readonly matrix: Matrix;
  readonly clip: Box;
  readonly lineWidth: number;
}

const CLIPS: readonly number[] = [OPS.clip, OPS.eoClip];
const STROKES: readonly number[] = [OPS.stroke, OPS.closeStroke];

function painted(ops: readonly number[], args: readonly unknown[], paper: Matrix, whole: Box): PaintedPath[] {
  const paths: PaintedPath[] = [];
  const stack: State[] = [];
  let state: State = { matrix: paper, clip: whole, lineWidth: 1 };
  let clipping = false;
  ops.forEach((op, i) => {
    const given = args[i] as readonly unknown[];
    if (op === OPS.save) stack.push(state);
    else if (op === OPS.restore) state = stack.pop() ?? state;
    else if (op === OPS.transform) state = { ...state, matrix: times(state.matrix, given as Matrix) };
    else if (op === OPS.setLineWidth) state = { ...state, lineWidth: Number(given[0]) };
    else if (op === OPS.setGState) {
      const width = (given[0] as readonly (readonly [string, unknown])[]).find(([key]) => key === 'LW');
      if (width) state = { ...state, lineWidth: Number(width[1]) };
    } else if (CLIPS.includes(op)) clipping = true;
    else if (op === OPS.paintFormXObjectBegin || op === OPS.beginGroup)
      throw new Error('a form, which is not read here');
    else if (op === OPS.constructPath) {
      const [paint, data] = given as readonly [number, readonly [ArrayLike<number> | null]];
      const { strokes, curved } = strokesOf(data[0] ?? [], state.matrix);
      const box = boxOf(strokes.flat());
      if (clipping) state = { ...state, clip: meet(state.clip, box) };
      clipping = false;
      if (paint === OPS.endPath || strokes.length === 0) return;
      const scale = Math.sqrt(Math.abs(state.matrix[0]! * state.matrix[3]! - state.matrix[1]! * state.matrix[2]!));
      const lineWidth = STROKES.includes(paint) ? state.lineWidth * scale : 0;
      paths.push({ strokes, box, clip: state.clip, curved, lineWidth });
    }
  });
  return paths;
}

/** The library writes a path as numbers: 0 move, 1 line, 2 curve by three points, 3 by two, 4 close; each with its points. */
function strokesOf(data: ArrayLike<number>, matrix: Matrix) {
  const points = [1, 1, 3, 2, 0];
  const strokes: [number, number][][] = [];
  let curved = false;
  for (let i = 0; i < data.length;) {
    const kind = data[i]!;
    const count = points[kind];
    if (count === undefined) throw new Error(`a path of an unknown form: ${kind}`);
    i += 1 + 2 * count;
    curved ||= kind === 2 || kind === 3;
    if (kind === 0) strokes.push([]);
    if (count > 0) strokes.at(-1)!.push(at(matrix, data[i - 2]!, data[i - 1]!));
  }
  return { strokes, curved };
}

function textOf(item: { str: string; transform: number[]; width: number; height: number }, paper: Matrix): DrawnText {
  const [a = 0, b = 0, c = 0, d = 0, x = 0, y = 0] = item.transform;
  const size = Math.hypot(a, b);
  const [along, up] = [
    [(a / size) * item.width, (b / size) * item.width],
    // Capitals of this font, mm below nothing: 0.668 of its size.
    [c * 0.668, d * 0.668],
  ] as const;
  const corners = [0, 1].flatMap((s) =>
    [0, 1].map((t) => [x + s * along[0] + t * up[0], y + s * along[1] + t * up[1]]),
  );
  return {
    text: item.str,
    box: boxOf(corners.map(([px, py]) => at(paper, px!, py!))),
    turn: Math.round((Math.atan2(b, a) * 180) / Math.PI),
    mirrored: a * d - b * c <= 0,
  };
}

function boxOf(points: readonly (readonly [number, number])[]): Box {
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  return { left: Math.min(...xs), top: Math.min(...ys), right: Math.max(...xs), bottom: Math.max(...ys) };
}

export const meet = (a: Box, b: Box): Box => ({
  left: Math.max(a.left, b.left),
  top: Math.max(a.top, b.top),
  right: Math.min(a.right, b.right),
  bottom: Math.min(a.bottom, b.bottom),
});
