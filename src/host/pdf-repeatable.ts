/**
 * Takes out of a browser's PDF what differs from one print of the same sheet to the next, each in place and at the same
 * length, so that the offsets of the cross-reference table stay true.
 *
 * Measured on three browsers: two prints differ in the dates, and in the names of tagged elements (`node00000015`),
 * which count on from whatever the page showed before. Nothing else.
 */
import { Buffer } from 'node:buffer';

/** Every PDF says this date: a card's own date is on the card. */
const fixedDate = "D:20000101000000+00'00'";

export function repeatablePdf(pdf: Uint8Array): Uint8Array {
  // Latin-1 maps each byte to one character and back.
  const text = Buffer.from(pdf).toString('latin1');
  return Buffer.from(renumberElements(fixDates(text)), 'latin1');
}

function fixDates(text: string): string {
  return text.replace(/(\/(?:CreationDate|ModDate) \()D:\d{14}[+-]\d\d'\d\d'(?=\))/g, `$1${fixedDate}`);
}

/** Elements are numbered from 1 in their old order: the name tree of the document is sorted by these names, and stays so. */
function renumberElements(text: string): string {
  const name = /\(node(\d{8})\)/g;
  const old = [...new Set([...text.matchAll(name)].map((match) => match[1] ?? ''))].toSorted();
  const renumbered = new Map(old.map((digits, index) => [digits, String(index + 1).padStart(8, '0')]));
  return text.replace(name, (whole, digits: string) => `(node${renumbered.get(digits) ?? digits})`);
}
