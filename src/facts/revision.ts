/**
 * Revision letters: A, B, … Y, AA, AB, …, without the letters that are taken for numbers or for one another.
 * "omitting the letters I, O, Q, S, X, and Z": US Navy engineering manual; the same set in ASME Y14.35. A plant may set its own.
 */
export const REVISION_LETTERS = 'ABCDEFGHJKLMNPRTUVWY';

/** 1 for the first revision; undefined where a letter is not in the row. */
export function revisionNumber(text: string, letters: string = REVISION_LETTERS): number | undefined {
  let number = 0;
  for (const letter of text) {
    const place = letters.indexOf(letter);
    if (place < 0) return undefined;
    number = number * letters.length + place + 1;
  }
  return text === '' ? undefined : number;
}

/** The letters of revision n ≥ 1: every number has one, and every text of the row's letters a number. */
export function revisionText(n: number, letters: string = REVISION_LETTERS): string {
  let [rest, text] = [n, ''];
  while (rest > 0) {
    rest -= 1;
    text = letters[rest % letters.length]! + text;
    rest = Math.floor(rest / letters.length);
  }
  return text;
}
