/** A dimension: extension lines, a thin line with filled arrow heads, the number along it; outside where there is no room. */
import type { Mark } from '../../cards/card.ts';
import { around, num, onPaper, type Box, type Point } from './paper.ts';
import { labelBox, labelMarkup, TEXT_MM, textWidth, type Label } from './text.ts';

type Dimension = Extract<Mark, { kind: 'dimension' }>;

const ARROW_MM = 2.4;
const THIN = 'fill="none" stroke="#000" stroke-width="0.25"';

/** `lines`: the number in the first unit and, if there is one, in the second. */
export function drawDimension(mark: Dimension, lines: readonly string[], scale: number): { svg: string; box: Box } {
  const from = onPaper(mark.from[0], mark.from[1], scale);
  const to = onPaper(mark.to[0], mark.to[1], scale);
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const along = length === 0 ? { x: 1, y: 0 } : { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
  // Left of the way, seen with y upward, is this on paper.
  const left = { x: along.y, y: -along.x };
  const a = moved(from, left, mark.offset / scale);
  const b = moved(to, left, mark.offset / scale);
  const widest = Math.max(...lines.map((text) => textWidth(text)));
  const inside = length >= 2 * ARROW_MM + 1;
  const labels = labelsOf({ a, b, along, length, lines, fits: widest + 2 * ARROW_MM <= length, widest });
  const parts = [
    extension(from, a),
    extension(to, b),
    inside ? `<path d="M${at(a)}L${at(b)}" ${THIN}/>` : outsideLine(a, b, along),
    arrow(a, along, inside ? 1 : -1),
    arrow(b, along, inside ? -1 : 1),
    ...labels.map(labelMarkup),
  ];
  const reach = inside ? 0 : 2.5 * ARROW_MM;
  const boxes = [around([from, to, moved(a, along, -reach), moved(b, along, reach)], 1), ...labels.map(labelBox)];
  return { svg: parts.join(''), box: unionOf(boxes) };
}

interface Labelled {
  readonly a: Point;
  readonly b: Point;
  readonly along: Point;
  readonly length: number;
  readonly lines: readonly string[];
  readonly fits: boolean;
  readonly widest: number;
}

/** Along the line, above it in the first unit and below it in the second; or level beside the far end. */
function labelsOf({ a, b, along, length, lines, fits, widest }: Labelled): Label[] {
  // Text never stands on its head: it reads from below or from the right.
  const flip = along.x < -1e-9 || (Math.abs(along.x) <= 1e-9 && along.y > 0);
  const reading = flip ? { x: -along.x, y: -along.y } : along;
  const below = { x: -reading.y, y: reading.x };
  const shift = TEXT_MM * 0.75;
  const sides = [-shift, shift];
  if (fits) {
    const middle = moved(a, along, length / 2);
    const turn = (Math.atan2(reading.y, reading.x) * 180) / Math.PI;
    return lines.map((text, i) => ({
      at: moved(middle, below, sides[i] ?? 0),
      text,
      anchor: 'middle',
      turn,
      bold: i === 0,
    }));
  }
  const steep = Math.abs(along.y) > Math.abs(along.x);
  const gap = steep ? 2 + ARROW_MM * 0.4 : 3 * ARROW_MM + widest / 2;
  const centre = steep ? { x: (a.x + b.x) / 2 + gap, y: (a.y + b.y) / 2 } : moved(b, along, gap);
  const rows = lines.length > 1 ? [-TEXT_MM * 0.6, TEXT_MM * 0.6] : [0];
  return lines.map((text, i) => ({
    at: { x: centre.x, y: centre.y + (rows[i] ?? 0) },
    text,
    anchor: steep ? 'start' : 'middle',
    bold: i === 0,
  }));
}

function outsideLine(a: Point, b: Point, along: Point): string {
  const reach = 2.5 * ARROW_MM;
  return `<path d="M${at(moved(a, along, -reach))}L${at(a)}M${at(b)}L${at(moved(b, along, reach))}" ${THIN}/>`;
}

/** From just off the body to just beyond the dimension's line. */
function extension(body: Point, line: Point): string {
  const length = Math.hypot(line.x - body.x, line.y - body.y);
  if (length < 1) return '';
  const way = { x: (line.x - body.x) / length, y: (line.y - body.y) / length };
  return `<path d="M${at(moved(body, way, 0.6))}L${at(moved(line, way, 1))}" ${THIN}/>`;
}

function arrow(tip: Point, along: Point, way: 1 | -1): string {
  const tail = moved(tip, along, way * ARROW_MM);
  const across = { x: -along.y, y: along.x };
  return `<path d="M${at(tip)}L${at(moved(tail, across, 0.5))}L${at(moved(tail, across, -0.5))}Z"/>`;
}

function moved(point: Point, way: Point, by: number): Point {
  return { x: point.x + way.x * by, y: point.y + way.y * by };
}

function at(point: Point): string {
  return `${num(point.x)} ${num(point.y)}`;
}

function unionOf(boxes: readonly Box[]): Box {
  return around(
    boxes.flatMap((box) => [
      { x: box.left, y: box.top },
      { x: box.right, y: box.bottom },
    ]),
  );
}
