import type { Finding } from './finding.ts';

/**
 * Two findings with the same key say the same: of the same lines, in the same words. Their numbers may differ by what the hand
 * makes of them, a place that lies anywhere along a wall.
 */
export const keyOfFinding = ({ id, place, what, notes }: Finding): string =>
  [id, ...[place, ...notes.map((note) => note.place)].map(({ file, start }) => `${file}:${start}`), wordsOf(what)].join(
    ' ',
  );

/** Without the numbers that stand alone: those of a name, as in mill-8, belong to it. */
const wordsOf = (text: string): string => text.replace(/(?<![\w-])-?\d[\d.]*(?![\w-])/g, '#');

/** Both hands, and models on one base, meet the same mistake: it is said once. */
export function unique(findings: readonly Finding[]): Finding[] {
  const seen = new Set<string>();
  return findings.filter((finding) => {
    const key = keyOfFinding(finding);
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}
