/**
 * Printed sheets put together into one PDF: each keeps its own page numbers, so that a page missing from a pile is missed.
 * The sheets themselves carry the tags for screen readers; the pile does not.
 */

/** Every PDF says this date: a card's own date is on the card. */
const FIXED = new Date(Date.UTC(2000, 0, 1));

export interface Pile {
  /** Path of the PDF. */
  readonly name: string;
  readonly title: string;
  readonly language: string;
  /** Names of the sheets in it, in their order. */
  readonly of: readonly string[];
}

/** The same sheets give the same bytes. */
export async function joinPdf({ title, language }: Pile, pdfs: readonly Uint8Array[]): Promise<Uint8Array> {
  // Half a second of loading: only where something is joined.
  const { PDFDocument } = await import('@cantoo/pdf-lib');
  const joined = await PDFDocument.create({ updateMetadata: false });
  for (const pdf of pdfs) {
    const part = await PDFDocument.load(pdf, { updateMetadata: false });
    for (const page of await joined.copyPages(part, part.getPageIndices())) joined.addPage(page);
  }
  joined.setTitle(title, { showInWindowTitleBar: true });
  joined.setLanguage(language);
  joined.setProducer('Platen');
  joined.setCreationDate(FIXED);
  joined.setModificationDate(FIXED);
  return joined.save();
}
