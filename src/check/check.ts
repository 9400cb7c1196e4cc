/** What a file of src/check/checks/ exports: one check with everything about it. */
import type { Fact, Facts, Use } from '../facts/facts.ts';
import type { Subject } from '../facts/subject.ts';
import type { Place, Severity } from '../findings/finding.ts';

export interface Check {
  /** Permanent, in the trade's words. */
  readonly id: string;
  readonly severity: Severity;
  /** Why it matters on the floor. */
  readonly why: string;
  readonly run: (subject: Subject, facts: Facts) => readonly Fault[];
}

export interface Fault {
  /** Fact at fault: the finding stands at the line it was given in. */
  readonly at: string;
  /** Offsets inside the text of that line, where a part of it is at fault. */
  readonly within?: readonly [number, number];
  /** The arithmetic that fails, with units. */
  readonly what: string;
  /** What would mend it, with the nearest value that would pass. */
  readonly mend: string;
  /** Facts it conflicts with, and what each of them says. */
  readonly against: readonly { readonly at: string; readonly text: string }[];
}

/** Reads for a check; undefined where something it needs is missing: that is another finding's business. */
export function look<T>(facts: Facts, reader: (use: Use) => T): T | undefined {
  const reading = facts.read(reader);
  return reading.ok ? reading.value : undefined;
}

/**
 * Where a fact was given: its own line; of a derived fact the first number of the model it came from, else of the plant,
 * else the first name.
 */
export function placeOf(facts: Facts, id: string): Place | undefined {
  const number = (kind: 'given' | 'plant') =>
    find(facts, id, (fact) => fact.origin.kind === kind && fact.state.ok && typeof fact.state.value !== 'string');
  return number('given') ?? number('plant') ?? find(facts, id, (fact) => fact.origin.kind !== 'derived');
}

function find(facts: Facts, id: string, isIt: (fact: Fact) => boolean, seen = new Set<string>()): Place | undefined {
  if (seen.has(id)) return undefined;
  seen.add(id);
  const fact = facts.fact(id);
  if (!fact) return undefined;
  if ('place' in fact.origin && isIt(fact)) return fact.origin.place;
  for (const input of fact.inputs) {
    const place = find(facts, input, isIt, seen);
    if (place) return place;
  }
  return undefined;
}
