/** What is held against each other: a model as its cards and facts stand, in a release or in its spec. */
import type { MadeCard } from '../cards/card.ts';
import type { FactState } from '../facts/state.ts';

export interface ModelState {
  readonly id: string;
  readonly title: string;
  readonly revision: string;
  readonly cards: readonly MadeCard[];
  /** By hand; of each, all facts by id. */
  readonly facts: ReadonlyMap<string, ReadonlyMap<string, FactState>>;
  /** Where a line was given, `models/tarn.yaml:17`; nobody knows of a release. */
  readonly where?: (fact: string) => string | undefined;
}
