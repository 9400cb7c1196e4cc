/** What is held against each other: a model as its cards and facts stand, in a release or in its spec. */
import type { MadeCard } from '../cards/card.ts';
import type { FactState } from '../facts/state.ts';
import type { Hand } from '../facts/subject.ts';

/** The hands that either is made in, the right one first. */
export const handsOf = (...states: readonly ModelState[]): readonly Hand[] =>
  (['right', 'left'] as const).filter((hand) => states.some(({ facts }) => facts.has(hand)));

export interface ModelState {
  readonly id: string;
  readonly title: string;
  readonly revision: string;
  readonly cards: readonly MadeCard[];
  /** By hand; of each, all facts by id. */
  readonly facts: ReadonlyMap<string, ReadonlyMap<string, FactState>>;
  /**
   * A line of the plant that this model does not read: whether it is there all the same, is not, or nobody knows. Of what is
   * there nothing changed but that it is read.
   */
  readonly plantHas: (id: string) => boolean | undefined;
  /** Where a line was given, `models/tarn.yaml:17`; nobody knows of a release. */
  readonly where?: (fact: string) => string | undefined;
}
