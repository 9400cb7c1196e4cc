import type { Finding } from './finding.ts';

/** Two findings with the same key say the same. */
export const keyOfFinding = ({ id, place, what }: Finding): string => `${id} ${place.file} ${place.start} ${what}`;

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
