/** What a PDF says, read back by a general PDF library. */
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

export interface ReadPdf {
  /** Text of each page, runs joined by a space, blanks folded. */
  readonly pages: readonly string[];
  /** Width and height of each page in mm. */
  readonly sizesMm: readonly (readonly [number, number])[];
}

const MM_PER_POINT = 25.4 / 72;

export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
  const doc = await getDocument({ data: Uint8Array.from(bytes), verbosity: 0 }).promise;
  const pages: string[] = [];
  const sizesMm: [number, number][] = [];
  for (let n = 1; n <= doc.numPages; n++) {
    const page = await doc.getPage(n);
    const { items } = await page.getTextContent();
    pages.push(
      items
        .map((item) => ('str' in item ? item.str : ''))
        .join(' ')
        .replace(/\s+/g, ' '),
    );
    const { width, height } = page.getViewport({ scale: 1 });
    sizesMm.push([width * MM_PER_POINT, height * MM_PER_POINT]);
  }
  await doc.destroy();
  return { pages, sizesMm };
}
