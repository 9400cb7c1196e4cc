/** The fonts the program carries, read from their files: what they can say and how high their capitals are. */
import { shipped } from '../../../src/host/shipped.ts';
import { readFont, type FontFacts } from '../../print/font.ts';

const FAMILIES = { 'Atkinson Hyperlegible Next': 'next', 'Atkinson Hyperlegible Mono': 'mono' } as const;

const files = new Map<string, FontFacts>(
  Object.entries(FAMILIES).flatMap(([family, of]) =>
    [400, 700].map((weight) => {
      const bytes = shipped(
        `npm:@fontsource/atkinson-hyperlegible-${of}/files/atkinson-hyperlegible-${of}-latin-${weight}-normal.woff2`,
      );
      return [`${family} ${weight}`, readFont(bytes!)] as const;
    }),
  ),
);

/** Undefined for a font that the program doesn't carry. */
export const fontOf = (family: string, weight: number): FontFacts | undefined =>
  files.get(`${family} ${weight >= 600 ? 700 : 400}`);

/** Name of a font inside a PDF, `BAAAAA+AtkinsonHyperlegibleMonoExtraLight-Bold`: the variable font it was cut from keeps its own. */
export function fontInPdf(name: string): FontFacts | undefined {
  const [, of, bold] = /^[A-Z]{6}\+AtkinsonHyperlegible(Next|Mono)\w*-(Bold)?/.exec(name) ?? [];
  return of ? fontOf(`Atkinson Hyperlegible ${of}`, bold ? 700 : 400) : undefined;
}
