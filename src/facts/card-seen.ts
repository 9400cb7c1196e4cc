/** What a card shows, as far as checks look at it: a number with limits and the gauge that is to read it. */
export interface CardSeen {
  readonly station: string;
  readonly readings: readonly Reading[];
  /** Texts in somebody's own words. */
  readonly notes: readonly { readonly fact: string; readonly text: string }[];
}

export interface Reading {
  readonly fact: string;
  /** Fact that names the gauge for this check. */
  readonly gauge: string;
  /** How many of its steps lie inside the limits. */
  readonly counts: number;
  /** Why it cannot be read at all. */
  readonly why?: string;
}
