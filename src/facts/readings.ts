/** Measured values, as stations write them down: what was measured of which model, piece by piece. */
import type { Kind } from '../units/quantity.ts';
import type { Leaf } from './leaf.ts';

/** All readings of one fact that count for one hand of a model at its present revision, in the order of the file. */
export interface Readings {
  /** Id of the fact that was measured. */
  readonly fact: string;
  /** Where they were taken. */
  readonly station: string;
  /** What was read: a length, a pressure. */
  readonly reads: Kind;
  /** Unit of the first of them. */
  readonly unit: string;
  /** Most decimals that any of them has in that unit. */
  readonly fineness: number;
  /** In the base unit of the kind. */
  readonly values: readonly number[];
  /** Pieces that were measured together, in the order taken; empty where no reading names its sample. */
  readonly samples: readonly { readonly name: string; readonly values: readonly number[] }[];
  /** Day of the first and of the last, YYYY-MM-DD. */
  readonly from: string;
  readonly to: string;
}

/** By the fact that was measured. */
export type ReadingsByFact = ReadonlyMap<string, Leaf<Readings>>;
