/** Every character comes from a font that the cards carry. */
import { fontInPdf, fontOf } from './fonts.ts';
import type { PaperPage } from './paper.ts';
import type { TextRun } from './texts.ts';

export function withoutGlyph(texts: readonly TextRun[]): string[] {
  return texts.flatMap(({ text, where, family, weight }) => {
    const font = fontOf(family, weight);
    if (!font) return [`no font of the cards, ${family}: ${where}: ${text}`];
    const missing = lacking(text, font.characters);
    return missing === '' ? [] : [`${family} has no ${missing}: ${where}: ${text}`];
  });
}

/** The fonts that the paper really carries, heads and feet of pages among them. */
export function withoutGlyphOnPaper(pages: readonly PaperPage[]): string[] {
  return pages.flatMap(({ texts, fonts }, i) => [
    ...fonts.filter((name) => !fontInPdf(name)).map((name) => `page ${i + 1}: the font ${name} is none of the cards`),
    ...texts.flatMap(({ text, font }) => {
      const missing = lacking(text, fontInPdf(font)?.characters ?? new Set());
      return missing === '' ? [] : [`page ${i + 1}: ${font} has no ${missing}: ${text}`];
    }),
  ]);
}

const lacking = (text: string, characters: ReadonlySet<number>): string =>
  [...new Set(text.replace(/\s/g, ''))].filter((one) => !characters.has(one.codePointAt(0)!)).join(' ');
