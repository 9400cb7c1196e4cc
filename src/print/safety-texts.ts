/** Texts of safety in a language: which they are, and how they stand where nobody went over their translation. */
import type { Words } from './words.ts';

/** Sentences that keep people from harm: a gap in them is never left blank. */
export const isSafety = (id: string): boolean => /^(?:signals|cautions)\.|^sheet\.(?:in-doubt|first-piece)$/.test(id);

/** All of them as one text in one order: what a review is of. */
export const safetyTexts = ({ sentences }: Words): string =>
  [...sentences]
    .flatMap(([id, { text }]) => (isSafety(id) ? [`${id}: ${text}`] : []))
    .toSorted()
    .join('\n');
