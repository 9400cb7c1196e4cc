/**
 * A finding: what is wrong in a file of the user, where, why it matters on the floor and what would mend it.
 * A user's mistake is always a finding and never a throw.
 */
export type Severity = 'error' | 'caution';

/** A stretch of a file, as offsets into its text; line and column appear only when rendered. */
export interface Place {
  readonly file: string;
  readonly start: number;
  readonly end: number;
}

export interface Note {
  readonly place: Place;
  readonly text: string;
}

export interface Finding {
  /** Permanent id in the trade's words. */
  readonly id: string;
  readonly severity: Severity;
  readonly place: Place;
  /** What is wrong, with the arithmetic that fails. */
  readonly what: string;
  /** Why it matters on the floor. */
  readonly why: string;
  /** What would mend it. */
  readonly mend: string;
  /** Other lines it conflicts with. */
  readonly notes: readonly Note[];
  /** Ids of the facts that are missing or wrong because of it: findings that follow from those hang under this one. */
  readonly about: readonly string[];
  /** Ids of the facts it was found in and of all they came from. */
  readonly from?: readonly string[];
  /** Errors that follow from this one. */
  readonly follows?: readonly Finding[];
}
