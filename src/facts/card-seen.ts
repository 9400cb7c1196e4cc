/** What a card shows, as far as checks look at it: a number with limits and the gauge that is to read it. */
export interface CardSeen {
  readonly station: string;
  readonly readings: readonly Reading[];
  /** Facts that name the gauges of this card, with limits to read or without. */
  readonly gauges: readonly string[];
  /** Facts printed as one number, without limits. */
  readonly figures: readonly string[];
  /** What its steps are called: the last part of the id of each sentence. */
  readonly steps: readonly string[];
  /** Texts in somebody's own words. */
  readonly notes: readonly { readonly fact: string; readonly text: string }[];
}

export interface Reading {
  readonly fact: string;
  /** Fact that names the gauge for this check. */
  readonly gauge: string;
  /** How many of its steps lie inside the limits. */
  readonly counts: number;
  /** Whether any reading is left between the limits drawn in by its uncertainty; absent where it has none. */
  readonly provable?: boolean;
  /** Fact that asks for acceptance limits here. */
  readonly guarded?: string;
  /** Why it cannot be read at all. */
  readonly why?: string;
}
