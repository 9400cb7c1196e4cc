/** The QR code of a print, read by a general library as a phone would: from the paper, and from a photo of it. */
import { createCanvas } from '@napi-rs/canvas';
import jsQR from 'jsqr';
import { getDocument, type PDFDocumentProxy, type PDFPageProxy } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { photographed, type Picture } from './photo.ts';

const PRINT_DPI = 150;
/** The page is drawn once, in twice the dots of the print: a phone sees more than a fax. */
const DRAWN_DPI = 2 * PRINT_DPI;
/** The head's right corner, what a phone is held over: the code and what stands around it. */
const VIEW_MM = { width: 50, height: 50 };

/** Part of a page, in millimetres from its top left. */
export interface View {
  readonly page: number;
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** Page 1 in grey, its upper right corner. */
const cornerOf = (pdf: Uint8Array): Promise<Picture> =>
  opened(pdf, async (document) => {
    const page = await document.getPage(1);
    const acrossMm = (page.getViewport({ scale: 1 }).width / 72) * 25.4;
    const { width: widthMm, height: heightMm } = VIEW_MM;
    return await drawn(page, { xMm: acrossMm - widthMm, yMm: 0, widthMm, heightMm });
  });

/** What the codes in these views say, of the print in 150 dots to the inch; undefined where none is read. */
export const codesIn = (pdf: Uint8Array, views: readonly View[]): Promise<(string | undefined)[]> =>
  opened(pdf, async (document) => {
    const codes: (string | undefined)[] = [];
    for (const view of views) codes.push(decoded(halved(await drawn(await document.getPage(view.page), view))));
    return codes;
  });

async function opened<T>(pdf: Uint8Array, read: (document: PDFDocumentProxy) => Promise<T>): Promise<T> {
  const document = await getDocument({ data: Uint8Array.from(pdf), verbosity: 0 }).promise;
  const made = await read(document);
  await document.destroy();
  return made;
}

async function drawn(page: PDFPageProxy, view: Omit<View, 'page'>): Promise<Picture> {
  const dots = (mm: number): number => 2 * Math.round((mm * PRINT_DPI) / 25.4);
  const [width, height] = [dots(view.widthMm), dots(view.heightMm)];
  const viewport = page.getViewport({
    scale: DRAWN_DPI / 72,
    offsetX: -dots(view.xMm),
    offsetY: -dots(view.yMm),
  });
  const canvas = createCanvas(width, height);
  const context = canvas.getContext('2d');
  context.fillStyle = '#fff';
  context.fillRect(0, 0, width, height);
  // The library draws on any canvas; its types know the browser's alone.
  await page.render({ canvas: canvas as never, canvasContext: context as never, viewport }).promise;
  const { data } = context.getImageData(0, 0, width, height);
  const grey = Float32Array.from({ length: width * height }, (_, i) => {
    const [red, green, blue] = [data[4 * i]!, data[4 * i + 1]!, data[4 * i + 2]!];
    return 0.299 * red + 0.587 * green + 0.114 * blue;
  });
  return { width, height, grey };
}

/** In half the dots each way: four become one. */
function halved({ width, height, grey }: Picture): Picture {
  const [w, h] = [width >> 1, height >> 1];
  const at = (x: number, y: number): number => grey[y * width + x]!;
  const made = Float32Array.from({ length: w * h }, (_, i) => {
    const [x, y] = [2 * (i % w), 2 * Math.floor(i / w)];
    return (at(x, y) + at(x + 1, y) + at(x, y + 1) + at(x + 1, y + 1)) / 4;
  });
  return { width: w, height: h, grey: made };
}

function decoded({ width, height, grey }: Picture): string | undefined {
  const rgba = new Uint8ClampedArray(4 * width * height);
  grey.forEach((level, i) => rgba.set([level, level, level, 255], 4 * i));
  return jsQR.default(rgba, width, height)?.data;
}

/** A phone takes many pictures while it is held there, and one that is read is enough; turned so far, in degrees. */
const SHOTS = [7, -7, 4];

/** Faults of a print whose code should be `code`. */
export async function unreadable(code: string, pdf: Uint8Array): Promise<string[]> {
  const corner = await cornerOf(pdf);
  const told = (what: string, text: string | undefined) =>
    text === code ? [] : [`the QR code of ${what} says ${text ?? 'nothing'}, the card ${code}`];
  let photo: string | undefined;
  for (const turn of SHOTS) photo ??= decoded(photographed(corner, turn));
  return [...told('the print', decoded(halved(corner))), ...told('a photo', photo)];
}
