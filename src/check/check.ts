/** What a file of src/check/checks/ exports: one check with everything about it. */
import type { CardSeen } from '../facts/card-seen.ts';
import type { Facts, Use } from '../facts/facts.ts';
import type { FlowStation } from '../facts/flow.ts';
import type { Subject } from '../facts/subject.ts';
import type { Example, Kind, Place } from '../findings/finding.ts';

export interface Check extends Kind {
  readonly example: Example;
  readonly run: (bench: Bench) => readonly Fault[];
}

/** What a check may look at. */
export interface Bench {
  readonly subject: Subject;
  readonly facts: Facts;
  /** Every other hand and model, for what must differ between them. */
  readonly others: readonly Subject[];
  /** YYYY-MM-DD, the day it is checked for. */
  readonly on: string;
  /** Ids of checks whose findings are cautions: what may be permitted. */
  readonly cautions: readonly string[];
  /** Every station a body can pass. */
  readonly flow: readonly FlowStation[];
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
  /** Parts of the files that lack something because of it, as a row of another kind than was meant: no finding of their own. */
  readonly explains?: readonly string[];
  /** What makes it, where that makes others of this check as well: a floor under three pots, a row that is used twice. */
  readonly cause?: string;
  /** Offsets inside the text of that line, where a part of it is at fault. */
  readonly within?: readonly [number, number];
  /** The arithmetic that fails, with units. */
  readonly what: string;
  /** What would mend it, with the nearest value that would pass. */
  readonly mend: string;
  /** Facts it conflicts with, and what each of them says. `place`: of several with one name, which. */
  readonly against: readonly { readonly at: string; readonly text: string; readonly place?: Place }[];
}

/** Reads for a check; undefined where something it needs is missing: that is another finding's business. */
export function look<T>(facts: Facts, reader: (use: Use) => T): T | undefined {
  const reading = facts.read(reader);
  return reading.ok ? reading.value : undefined;
}
