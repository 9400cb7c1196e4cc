/** One thing that is not what it was, as plain data: in words, with its size and the lines it goes back to. */
import type { Line } from '../cards/card.ts';
import type { Move } from './move.ts';

export type Tag =
  /** It prints on a card. */
  | 'card'
  /** Only the checks of the spec read it. */
  | 'check'
  /** Nothing reads it but the record. */
  | 'record';

/** `was`: the fact that stood there before, where it is another one: the feed of another cutter. */
export type FactMove = Move & { readonly fact: string; readonly was?: string };

export interface Change {
  /** What it is: `key-number`, `step`, `tool`, `check`, `row`, `drawing`, `given` … */
  readonly is: string;
  readonly how: 'changed' | 'new' | 'gone';
  readonly tag: Tag;
  readonly line: Line;
  /** What is to be said of it besides: how far a number moved, what became of its limits. */
  readonly also: readonly Line[];
  /** Numbers in it that moved. */
  readonly moves: readonly FactMove[];
  /** Ids of given lines it goes back to. */
  readonly because: readonly string[];
  /** Where it stands on the new card: `steps/3`; absent of what is gone. */
  readonly at?: string;
}
