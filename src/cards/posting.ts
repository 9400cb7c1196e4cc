/** What is laid over a card when it is printed, none of it part of what the card says. */
import type { Line } from './card.ts';

/** What became of a card since another revision: laid over it, no part of what it says. */
export interface CardChanges {
  /** The revision it is held against. */
  readonly since: string;
  /** The revision with which it became what it is. */
  readonly revision: string;
  /** What is different, in words, with its size; none of a card that is new at its station. */
  readonly lines: readonly { readonly line: Line; readonly also: readonly Line[] }[];
  /** How many more there are, which the flags alone show. */
  readonly more: number;
  /** Where: `steps/3`, `tables/1/4`. */
  readonly at: readonly string[];
}

/** Laid over a card when it is printed; no part of its content code. */
export interface Posting {
  readonly revision: string;
  /** Of a release all of this is left open, and filled in each time it is posted. */
  readonly status: 'draft' | 'released';
  /** YYYY-MM-DD the print was made for. */
  readonly date: string;
  readonly code: string;
  /** Against the release before; absent of what was never released before. */
  readonly changes?: CardChanges;
}
