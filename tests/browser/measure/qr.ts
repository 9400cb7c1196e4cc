/** The QR code of a print, read by a general library as a phone would: from the paper, and from a photo of it. */
import { createCanvas } from '@napi-rs/canvas';
import jsQR from 'jsqr';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { photographed, type Picture } from './photo.ts';

const PRINT_DPI = 150;
/** The page is drawn once, in twice the dots of the print: a phone sees more than a fax. */
const DRAWN_DPI = 2 * PRINT_DPI;
/** The head's right corner, what a phone is held over: the code and what stands around it. */
const VIEW_MM = { width: 50, height: 50 };

/** Page 1 in grey, its upper right corner. */
export async function cornerOf(pdf: Uint8Array): Promise<Picture> {
  const document = await getDocument({ data: Uint8Array.from(pdf), verbosity: 0 }).promise;
  const page = await document.getPage(1);
  const [width, height] = [VIEW_MM.width, VIEW_MM.height].map((mm) => 2 * Math.round((mm * PRINT_DPI) / 25.4)) as [
    number,
    number,
  ];
  const whole = page.getViewport({ scale: DRAWN_DPI / 72 });
  const viewport = page.getViewport({ scale: DRAWN_DPI / 72, offsetX: width - whole.width });
  const canvas = createCanvas(width, height);
  const context = canvas.getContext('2d');
  context.fillStyle = '#fff';
  context.fillRect(0, 0, width, height);
  // The library draws on any canvas; its types know the browser's alone.
  await page.render({ canvas: canvas as never, canvasContext: context as never, viewport }).promise;
  const { data } = context.getImageData(0, 0, width, height);
  await document.destroy();
  const grey = Float32Array.from({ length: width * height }, (_, i) => {
    const [red, green, blue] = [data[4 * i]!, data[4 * i + 1]!, data[4 * i + 2]!];
    return 0.299 * red + 0.587 * green + 0.114 * blue;
  });
  return { width, height, grey };
}

/** In half the dots each way: four become one. */
export function halved({ width, height, grey }: Picture): Picture {
  const [w, h] = [width >> 1, height >> 1];
  const at = (x: number, y: number): number => grey[y * width + x]!;
  const made = Float32Array.from({ length: w * h }, (_, i) => {
    const [x, y] = [2 * (i % w), 2 * Math.floor(i / w)];
    return (at(x, y) + at(x + 1, y) + at(x, y + 1) + at(x + 1, y + 1)) / 4;
  });
  return { width: w, height: h, grey: made };
}

export function decoded({ width, height, grey }: Picture): string | undefined {
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
