/**
 * A drawing as SVG in true millimetres of paper: the marks at the stated scale, the scale in figures, a bar that proves the
 * print was not resized, and what its lines mean. Pure: the same drawing and words give the same text.
 */
import type { Drawing, Mark } from '../../cards/card.ts';
import { escaped, identifier } from '../markup.ts';
import { drawLegend, legendWidth, usedKinds } from './legend.ts';
import { hatchPattern, type Hatch } from './lines.ts';
import { drawMark, LAYERS, type Drawn, type Pen } from './marks.ts';
import { num, onPaper, union, type Box } from './paper.ts';
import { BAR_ROOM_MM, barLength, scaleBar } from './scale-bar.ts';
import { placeTags } from './tags.ts';
import { labelMarkup, TEXT_MM, textWidth } from './text.ts';

export interface DrawnSheet {
  readonly svg: string;
  readonly widthMm: number;
  readonly heightMm: number;
}

export interface DrawingWords extends Pick<Pen, 'text' | 'both'> {
  /** What the drawing shows, for those who cannot see it. */
  readonly title: string;
  /** 'Scale 1:5' and what the bar is for. */
  readonly scale: string;
  readonly lineWord: (kind: string) => string;
}

const MARGIN_MM = 1.5;
/** Room for two entries of the legend in a row. */
const LEGEND_MM = 86;
/** Up to this width an upright drawing leaves room for its legend at its side, so far off. */
const NARROW_MM = 42;
const BESIDE_MM = 6;

/** Scales a drawing may be put to, millimetres of the body per millimetre of paper. */
const SCALES = [1, 2, 2.5, 5, 10] as const;
/** Room on a page beside margins, caption and head. A wider sheet would make the browser shrink all of the page. */
const PAGE_MM = { width: 190, height: 235 };

/** The drawing at its scale, or at the next that fits on a page: the scale it states is the one it has. */
export function drawOnPage(
  drawing: Drawing,
  uid: string,
  wordsAt: (scale: number) => DrawingWords,
  style = '',
): DrawnSheet {
  const scales = SCALES.filter((scale) => scale >= drawing.scale);
  const drawn = scales.map((scale) => drawDrawing({ ...drawing, scale }, uid, wordsAt(scale), style));
  const fits = drawn.find(({ widthMm, heightMm }) => widthMm <= PAGE_MM.width && heightMm <= PAGE_MM.height);
  return fits ?? drawn.at(-1) ?? drawDrawing(drawing, uid, wordsAt(drawing.scale), style);
}

/** `uid` must be unique in the page the drawing stands on. `style` goes into a file of its own, to name its font. */
export function drawDrawing(drawing: Drawing, uid: string, words: DrawingWords, style = ''): DrawnSheet {
  const patternId = (hatch: Hatch) => identifier(uid, hatch);
  const drawn = drawMarks(drawing, { scale: drawing.scale, patternId, text: words.text, both: words.both });
  const box = drawn.length === 0 ? { left: 0, top: 0, right: 0, bottom: 0 } : union(drawn.map((each) => each.box));
  const used = usedKinds(drawing.marks);
  const frame = framed(
    box,
    used.lines.length + used.hatches.length > 0 ? drawLegendUnder(words, used, patternId) : undefined,
    words,
  );
  const layers = LAYERS.map((kinds) =>
    drawn
      .filter((each) => kinds.includes(each.kind))
      .map((each) => each.svg)
      .join(''),
  );
  const patterns = used.hatches.map((hatch) => hatchPattern(hatch, patternId(hatch))).join('');
  const { left, top, width, height } = frame;
  const svg =
    `<svg xmlns="http://www.w3.org/2000/svg" class="drawing" width="${num(width)}mm" height="${num(height)}mm" ` +
    `viewBox="${num(left)} ${num(top)} ${num(width)} ${num(height)}" role="img" aria-label="${escaped(words.title)}" ` +
    `font-family="'Atkinson Hyperlegible Next', sans-serif" font-size="${TEXT_MM}">` +
    `<title>${escaped(words.title)}</title>${style}` +
    `${patterns === '' ? '' : `<defs>${patterns}</defs>`}${layers.join('')}${frame.svg}</svg>`;
  return { svg, widthMm: width, heightMm: height };
}

/** All marks in their order; tags are given what room the others leave. */
function drawMarks({ marks, scale }: Drawing, pen: Pen): readonly (Drawn & { readonly kind: Mark['kind'] })[] {
  const fixed = marks.flatMap((mark) => (mark.kind === 'tag' ? [] : [{ kind: mark.kind, ...drawMark(mark, pen) }]));
  const tags = marks.flatMap((mark) => (mark.kind === 'tag' ? [mark] : []));
  const texts = fixed.filter(({ kind }) => kind === 'label' || kind === 'point' || kind === 'dimension');
  const placed = placeTags(
    tags.map(({ x, y, radius, text }) => ({ at: onPaper(x, y, scale), radius: radius / scale, text: pen.text(text) })),
    texts.map(({ box }) => box),
  );
  return [...fixed, ...placed.map((tag) => ({ kind: 'tag' as const, ...tag }))];
}

interface Legend {
  readonly draw: (at: { x: number; y: number }, width: number) => { svg: string; height: number };
  /** Room of its widest entry. */
  readonly widestMm: number;
}

function drawLegendUnder(
  words: DrawingWords,
  used: ReturnType<typeof usedKinds>,
  patternId: (hatch: Hatch) => string,
): Legend {
  const lines = used.lines.map((of) => ({ of, word: words.lineWord(of) }));
  const hatches = used.hatches.map((of) => ({ of, word: words.lineWord(`area-${of}`) }));
  const input = { lines, hatches, patternId };
  return { draw: (at, width) => drawLegend(input, at, width), widestMm: legendWidth(input) };
}

interface Frame {
  readonly svg: string;
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** The bar along the longer side, the scale below; the legend below as well, or beside a drawing that is narrow and upright. */
function framed(box: Box, legend: Legend | undefined, words: DrawingWords): Frame {
  const upright = box.bottom - box.top > box.right - box.left;
  const beside = upright && box.right - box.left <= NARROW_MM;
  const length = barLength(Math.max(box.right - box.left, box.bottom - box.top));
  const left = box.left - MARGIN_MM - (upright ? BAR_ROOM_MM + 2 : 0);
  const top = box.top - MARGIN_MM;
  const drawn = (upright ? box.right : Math.max(box.right, box.left + length)) + MARGIN_MM;
  const right = legend
    ? Math.max(drawn + (beside ? BESIDE_MM + legend.widestMm : 0), left + Math.max(LEGEND_MM, legend.widestMm))
    : Math.max(drawn, left + textWidth(words.scale));
  const bottom = (upright ? Math.max(box.bottom, box.top + length) : box.bottom) + MARGIN_MM;
  const barAt = upright ? { x: left + BAR_ROOM_MM, y: box.top } : { x: box.left, y: bottom + 1 };
  const scaleTop = bottom + (upright ? 1 : 1 + BAR_ROOM_MM);
  const scaleAt = { x: left + MARGIN_MM, y: scaleTop + TEXT_MM * 0.7 };
  const scale = labelMarkup({ at: scaleAt, text: words.scale, anchor: 'start', bold: true });
  const under = scaleTop + TEXT_MM * 1.4;
  const keyAt = beside ? { x: drawn + 3, y: top } : { x: left + MARGIN_MM, y: under };
  const key = legend?.draw(keyAt, right - MARGIN_MM - keyAt.x);
  const end = Math.max(under, key ? keyAt.y + key.height : under);
  const svg = scaleBar(barAt, length, upright) + scale + (key?.svg ?? '');
  return { svg, left, top, width: right - left, height: end + MARGIN_MM - top };
}
