/** Each kind of mark as SVG, with the room it takes on paper. */
import type { Arg, Mark } from '../../cards/card.ts';
import { escaped } from '../markup.ts';
import { drawDimension } from './dimension.ts';
import { lineAttributes, type Hatch } from './lines.ts';
import { around, num, onPaper, pathData, pointsOf, type Box } from './paper.ts';
import { labelBox, labelMarkup, MARK_MM } from './text.ts';

export interface Drawn {
  readonly svg: string;
  readonly box: Box;
}

export interface Pen {
  readonly scale: number;
  /** An argument as plain text. */
  readonly text: (arg: Arg) => string;
  /** A dimension's number: in the gauge's unit, and in the second. */
  readonly both: (arg: Extract<Mark, { kind: 'dimension' }>['text']) => readonly string[];
  readonly patternId: (hatch: Hatch) => string;
}

const POINT_RADIUS_MM = 3.6;

/** Of all but tags, which are placed when all else is: tags.ts. */
export function drawMark(mark: Exclude<Mark, { kind: 'tag' }>, pen: Pen): Drawn {
  if (mark.kind === 'line') return drawLine(mark, pen);
  if (mark.kind === 'circle') return drawCircle(mark, pen);
  if (mark.kind === 'area') return drawRegion({ hatch: mark.hatch, rings: [mark.points] }, pen);
  if (mark.kind === 'region') return drawRegion(mark, pen);
  if (mark.kind === 'label') return drawLabel(mark, pen);
  if (mark.kind === 'point') return drawPoint(mark, pen);
  return drawDimension(mark, pen.both(mark.text), pen.scale);
}

type Of<K extends Mark['kind']> = Extract<Mark, { kind: K }>;

function drawLine(mark: Of<'line'>, { scale }: Pen): Drawn {
  const d = pathData(mark.points, scale, mark.closed);
  return { svg: `<path d="${d}" ${lineAttributes(mark.line)}/>`, box: around(pointsOf(mark.points, scale), 0.5) };
}

const LEAST_DASHED_MM = 1.5;

function drawCircle(mark: Of<'circle'>, { scale }: Pen): Drawn {
  const centre = onPaper(mark.x, mark.y, scale);
  const r = mark.radius / scale;
  // A dashed circle as small as its dashes is a squiggle: a thin line tells it from a cut edge as well.
  const style =
    mark.line === 'hidden' && r < LEAST_DASHED_MM
      ? 'fill="none" stroke="#000" stroke-width="0.18"'
      : lineAttributes(mark.line);
  return {
    svg: `<circle cx="${num(centre.x)}" cy="${num(centre.y)}" r="${num(r)}" ${style}/>`,
    box: around([centre], r + 0.5),
  };
}

function drawRegion({ hatch, rings }: Pick<Of<'region'>, 'hatch' | 'rings'>, { scale, patternId }: Pen): Drawn {
  const d = rings.map((ring) => pathData(ring, scale, true)).join('');
  const rule = rings.length > 1 ? ' fill-rule="evenodd"' : '';
  return {
    svg: `<path d="${d}" fill="url(#${patternId(hatch)})"${rule} stroke="#000" stroke-width="0.25"/>`,
    box: around(
      rings.flatMap((ring) => pointsOf(ring, scale)),
      0.5,
    ),
  };
}

function drawLabel(mark: Of<'label'>, { scale, text }: Pen): Drawn {
  // Letters and numbers that are looked for in a list are larger than words.
  const found = mark.text.kind === 'literal' ? { sizeMm: MARK_MM, bold: true } : {};
  const label = { at: onPaper(mark.x, mark.y, scale), text: text(mark.text), anchor: mark.anchor, ...found };
  return { svg: labelMarkup(label), box: labelBox(label) };
}

function drawPoint(mark: Of<'point'>, { scale, text }: Pen): Drawn {
  const centre = onPaper(mark.x, mark.y, scale);
  const [x, y] = [num(centre.x), num(centre.y)];
  const number = { y: num(centre.y + (MARK_MM * 0.668) / 2), text: escaped(text(mark.number)) };
  return {
    svg:
      `<circle cx="${x}" cy="${y}" r="${POINT_RADIUS_MM}" fill="#fff" stroke="#000" stroke-width="0.4"/>` +
      `<text x="${x}" y="${number.y}" text-anchor="middle" font-size="${MARK_MM}" font-weight="700">${number.text}</text>`,
    box: around([centre], POINT_RADIUS_MM + 0.3),
  };
}

/** Areas lie lowest, numbers and words on top; within a layer the card's order holds. */
export const LAYERS: readonly (readonly Mark['kind'][])[] = [
  ['area', 'region'],
  ['line', 'circle'],
  ['dimension'],
  ['label', 'point', 'tag'],
];
