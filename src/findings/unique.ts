import type { Finding } from './finding.ts';

/** Both hands, and models on one base, meet the same mistake: it is said once. */
export function unique(findings: readonly Finding[]): Finding[] {
  const seen = new Set<string>();
  return findings.filter((finding) => {
    const key = `${finding.id} ${finding.place.file} ${finding.place.start} ${finding.what}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}
