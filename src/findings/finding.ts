/**
 * A finding: what is wrong in a file of the user, where, why it matters on the floor and what would mend it.
 * A user's mistake is always a finding and never a throw.
 */
import type { Sketch } from './sketch.ts';

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
  /** Parts of the files that lack something because of it: no gap there needs a finding of its own. */
  readonly explains?: readonly string[];
  /** What makes it, where that makes others of its kind as well: one mistake, and the first of them stands for all. */
  readonly cause?: string;
  /** What follows from this one. */
  readonly follows?: readonly Finding[];
}

/** When something can be found: in what was written, in what follows from it, in what the cards say. */
export type Stage = 'spec' | 'derived' | 'card';

/** A kind of finding, as the reference page shows it. */
export interface Kind {
  readonly id: string;
  readonly stage: Stage;
  readonly severity: Severity;
  /** Why it matters on the floor. */
  readonly why: string;
  /** How it is mended, in general. */
  readonly mend: string;
  readonly example?: Example;
  /** What is wrong, where a picture says it better. */
  readonly sketch?: Sketch;
}

/** A place of the sample workspace that passes as it stands, and fails with another text there. Both are run as tests. */
export interface Example {
  readonly file:
    'models/tarn.yaml' | 'models/plant/plant.yaml' | 'models/base/bolt-on.yaml' | 'models/readings/sizing.csv';
  readonly passes: string;
  readonly fails: string;
  /** Another text that the sample has to have for it, in both. */
  readonly beside?: { readonly file: Example['file']; readonly find: string; readonly replace: string };
  /** Ids of errors that come with it and cannot be had apart. */
  readonly also?: readonly string[];
}
