/** Height of capitals on paper. */
import { fontInPdf, fontOf } from './fonts.ts';
import type { PaperPage } from './paper.ts';
import type { Role, TextRun } from './texts.ts';

/**
 * Least height of capitals in millimetres. A key number is read from one metre: 0.006 of that less rounding (20 minutes of
 * arc, NUREG-0700); a step and a check from little more than half of it.
 */
export const LEAST_MM: Readonly<Record<Role, number>> = {
  'key number': 5.8,
  'key words': 3.3,
  step: 3.3,
  check: 3.3,
  drawing: 2,
  other: 2,
};

/** A font of no known capitals counts as having none. */
export const capitalsMm = ({ family, weight, sizeMm }: TextRun): number =>
  sizeMm * (fontOf(family, weight)?.capitals ?? 0);

export function tooLow(texts: readonly TextRun[]): string[] {
  return texts
    .filter((text) => capitalsMm(text) < LEAST_MM[text.role])
    .map(
      (text) =>
        `capitals of ${capitalsMm(text).toFixed(2)} mm, ${text.role} at least ${LEAST_MM[text.role]}: ${text.where}: ${text.text}`,
    );
}

/** The heads and feet of pages are seen on paper alone: of everything there, the least. */
export function tooLowOnPaper(pages: readonly PaperPage[]): string[] {
  return pages.flatMap(({ texts }, i) =>
    texts
      .filter((text) => (paperCapitalsMm(text) ?? Infinity) < LEAST_MM.other)
      .map((text) => `page ${i + 1}: capitals of ${paperCapitalsMm(text)!.toFixed(2)} mm on paper: ${text.text}`),
  );
}

/** Undefined where the letters come from a font that is none of the cards: that is a fault of its own. */
export function paperCapitalsMm({ font, sizeMm }: PaperPage['texts'][number]): number | undefined {
  const known = fontInPdf(font);
  return known && sizeMm * known.capitals;
}
