/** Cautions that somebody lets stand: they leave the findings, and print on the cards, until their day. */
import type { Permitted } from './cards/make.ts';
import type { Facts } from './facts/facts.ts';
import { namesOf } from './facts/row.ts';
import type { Subject } from './facts/subject.ts';
import type { Finding } from './findings/finding.ts';

interface Hand {
  readonly subject: Subject;
  readonly facts: Facts;
}

/** Permits that cover a caution found, each with what was found. */
export function permitted(subject: Subject, facts: Facts, found: readonly Finding[], on: string): Permitted[] {
  return inForce({ subject, facts }, on).flatMap((id) =>
    found
      .filter((finding) => finding.id === id && finding.severity === 'caution')
      .map(({ what, about }) => ({ what, at: about[0]!, ...subject.spec.permits![id]! })),
  );
}

/** Findings less the cautions permitted on that day. */
export function withoutPermitted(hand: Hand, findings: readonly Finding[], on: string): Finding[] {
  const ids = inForce(hand, on);
  return findings.filter((finding) => finding.severity === 'error' || !ids.includes(finding.id));
}

function inForce({ subject, facts }: Hand, on: string): string[] {
  const { permits } = subject.spec;
  return namesOf(permits).filter((id) => {
    const until = facts.read((use) => use(permits![id]!.until));
    return until.ok && until.value >= on;
  });
}
