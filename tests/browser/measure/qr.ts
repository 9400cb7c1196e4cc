/** The QR code of a print, read by a general library as a phone would: from the paper, and from a photo of it. */
import { createCanvas } from '@napi-rs/canvas';
import jsQR from 'jsqr';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { photographed, type Picture } from './photo.ts';

/** Dots to the inch of the print, and of the photo before it is made worse: a picture of a whole page in four million dots shows it so. */
const DPI = { print: 150, photo: 200 };
/** The head's right corner: what a phone is held over. */
const VIEW_MM = { width: 90, height: 60 };

/** Page 1 in grey, its upper right corner. */
export async function cornerOf(pdf: Uint8Array, dpi: number): Promise<Picture> {
  const document = await getDocument({ data: Uint8Array.from(pdf), verbosity: 0 }).promise;
  const page = await document.getPage(1);
  const [width, height] = [VIEW_MM.width, VIEW_MM.height].map((mm) => Math.round((mm * dpi) / 25.4)) as [
    number,
    number,
  ];
  const whole = page.getViewport({ scale: dpi / 72 });
  const viewport = page.getViewport({ scale: dpi / 72, offsetX: width - whole.width });
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

export function decoded({ width, height, grey }: Picture): string | undefined {
  const rgba = new Uint8ClampedArray(4 * width * height);
  grey.forEach((level, i) => rgba.set([level, level, level, 255], 4 * i));
  return jsQR.default(rgba, width, height)?.data;
}

/** Faults of a print whose code should be `code`. */
export async function unreadable(code: string, pdf: Uint8Array): Promise<string[]> {
  const told = (what: string, text: string | undefined) =>
    text === code ? [] : [`the QR code of ${what} says ${text ?? 'nothing'}, the card ${code}`];
  return [
    ...told('the print', decoded(await cornerOf(pdf, DPI.print))),
    ...told('a photo', decoded(photographed(await cornerOf(pdf, DPI.photo)))),
  ];
}
