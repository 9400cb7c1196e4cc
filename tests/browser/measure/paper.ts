/** What a PDF holds, read back by a general PDF library: texts with their places, fonts, straight strokes. Millimetres from the top left. */
import { getDocument, OPS, type PDFPageProxy } from 'pdfjs-dist/legacy/build/pdf.mjs';
import type { Quad } from './quad.ts';

export const MM_PER_POINT = 25.4 / 72;

export interface PaperText {
  readonly text: string;
  /** Name of the font in the PDF. */
  readonly font: string;
  readonly sizeMm: number;
  readonly quad: Quad;
}

/** A straight line that is drawn. */
export interface Stroke {
  readonly lengthMm: number;
  readonly widthMm: number;
}

export interface PaperPage {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly texts: readonly PaperText[];
  readonly fonts: readonly string[];
  readonly strokes: readonly Stroke[];
  /** All its text without blanks. */
  readonly folded: string;
}

export const folded = (text: string): string => text.replace(/\s+/g, '');

export async function readPaper(pdf: Uint8Array): Promise<PaperPage[]> {
  const document = await getDocument({ data: Uint8Array.from(pdf), verbosity: 0 }).promise;
  const pages: PaperPage[] = [];
  for (let n = 1; n <= document.numPages; n++) pages.push(await readPage(await document.getPage(n)));
  await document.destroy();
  return pages;
}

async function readPage(page: PDFPageProxy): Promise<PaperPage> {
  const [, , width = 0, height = 0] = page.view;
  const operators = await page.getOperatorList();
  const { items } = await page.getTextContent();
  const named = (font: string): string => (page.commonObjs.get(font) as { name: string }).name;
  const texts = items.flatMap((item): PaperText[] => {
    if (!('str' in item) || item.str.trim() === '') return [];
    const [a, b, c, d, x, y] = item.transform as [number, number, number, number, number, number];
    const size = Math.hypot(c, d);
    const [alongX, alongY] = [(a / Math.hypot(a, b)) * item.width, (b / Math.hypot(a, b)) * item.width];
    const corner = (along: number, up: number) => ({
      x: (x + along * alongX + up * c) * MM_PER_POINT,
      y: (height - y - along * alongY - up * d) * MM_PER_POINT,
    });
    // As high as letters are, in parts of the em.
    const quad: Quad = [corner(0, 0.7), corner(1, 0.7), corner(1, -0.2), corner(0, -0.2)];
    return [{ text: item.str, font: named(item.fontName), sizeMm: size * MM_PER_POINT, quad }];
  });
  const all = items.map((item) => ('str' in item ? item.str : '')).join('');
  return {
    widthMm: width * MM_PER_POINT,
    heightMm: height * MM_PER_POINT,
    texts,
    fonts: [...new Set(texts.map(({ font }) => font))],
    strokes: strokesOf(operators),
    folded: folded(all),
  };
}

/** Straight lines along the page's edges, as long as the transformations in force make them. */
function strokesOf({ fnArray, argsArray }: { fnArray: number[]; argsArray: unknown[][] }): Stroke[] {
  const stack: { scale: number; width: number }[] = [];
  const found: Stroke[] = [];
  let now = { scale: MM_PER_POINT, width: 1 };
  fnArray.forEach((operation, i) => {
    const args = argsArray[i] ?? [];
    if (operation === OPS.save) stack.push(now);
    if (operation === OPS.restore) now = stack.pop() ?? now;
    if (operation === OPS.transform) now = { ...now, scale: now.scale * Math.hypot(Number(args[0]), Number(args[1])) };
    if (operation === OPS.setLineWidth) now = { ...now, width: Number(args[0]) };
    if (operation === OPS.setGState)
      for (const [key, value] of args[0] as [string, unknown][])
        if (key === 'LW') now = { ...now, width: Number(value) };
    if (operation !== OPS.constructPath || args[0] !== OPS.stroke) return;
    const [x0 = 0, y0 = 0, x1 = 0, y1 = 0] = Array.from((args[2] ?? []) as ArrayLike<number>);
    if (Math.min(x1 - x0, y1 - y0) > 1e-6) return;
    found.push({ lengthMm: Math.max(x1 - x0, y1 - y0) * now.scale, widthMm: now.width * now.scale });
  });
  return found;
}
