/**
 * A number as printed, with the decimal mark of a language: `0,642` for `.642` where the mark is a comma, as a number does
 * not begin with a comma. Fractions and whole numbers stay as they are. Source of the mark: ISO 80000-1 allows point and
 * comma on the line alike.
 */
export type DecimalMark = '.' | ',';

export function inLanguage(text: string, mark: DecimalMark): string {
  if (mark === '.') return text;
  return text.replace(/(\d?)\.(?=\d)/g, (_, before: string) => `${before === '' ? '0' : before},`);
}
