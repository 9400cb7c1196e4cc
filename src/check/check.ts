/** What a file of src/check/checks/ exports: one check with everything about it. */
import type { CardSeen } from '../facts/card-seen.ts';
import type { Facts, Use } from '../facts/facts.ts';
import type { Subject } from '../facts/subject.ts';
import type { Place, Severity } from '../findings/finding.ts';

/** When a check can be made: on what was written, on what follows from it, on what the cards say. */
export type Stage = 'spec' | 'derived' | 'card';

export interface Check {
  /** Permanent, in the trade's words. */
  readonly id: string;
  readonly stage: Stage;
  readonly severity: Severity;
  /** Why it matters on the floor. */
  readonly why: string;
  /** How it is mended, in general. */
  readonly mend: string;
  readonly example: Example;
  readonly run: (bench: Bench) => readonly Fault[];
}

/** A place of the sample workspace that passes as it stands, and fails with another text there. Both are run as tests. */
export interface Example {
  readonly file: 'models/tarn.yaml' | 'models/plant/plant.yaml' | 'models/base/bolt-on.yaml';
  readonly passes: string;
  readonly fails: string;
  /** Ids of errors that come with it and cannot be had apart. */
  readonly also?: readonly string[];
}

/** What a check may look at. */
export interface Bench {
  readonly subject: Subject;
  readonly facts: Facts;
  /** Every other hand and model, for what must differ between them. */
  readonly others: readonly Subject[];
  /** YYYY-MM-DD, the day it is checked for. */
  readonly on: string;
  /** Of checks of stage card: what the cards show. */
  readonly seen: readonly CardSeen[];
}

export interface Fault {
  /** Fact at fault: the finding stands at the line it was given in. */
  readonly at: string;
  /** Where it stands, where that is no fact: a name in a map. */
  readonly place?: Place;
  /** Ids of parts of the files it hangs on beyond facts: what is wrong with those explains it. */
  readonly hangsOn?: readonly string[];
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
