/** What stands in the ledger: one act an entry, in the order they were done. */

/** Who did it, when, why: the name as the plant writes it. */
interface Act {
  /** YYYY-MM-DD. */
  readonly on: string;
  readonly name: string;
  readonly reason: string;
}

/** From when bodies are started on a release: a day, or an order and all after it. */
export type Start = { readonly date: string } | { readonly order: number };

/** What becomes of bodies begun on the release before. */
export const UNDER_WAY = ['finish-on-old', 'use-as-is', 'rework', 'scrap'] as const;
export type UnderWay = (typeof UNDER_WAY)[number];

export interface ReleaseAct extends Act {
  readonly act: 'release';
  readonly model: string;
  readonly revision: string;
  /** The frozen release: its file, and the SHA-256 of that file. */
  readonly record: { readonly path: string; readonly sha256: string };
  readonly from: Start;
  /** Of the first release of a model there is nothing under way. */
  readonly underWay?: UnderWay;
  /** Last day on which bodies are finished on the old one. */
  readonly oldUntil?: string;
}

/**
 * The same cards in other words, another language or with other templates: a version of the release, under the same codes. It
 * supersedes nothing; from its day on it is what is posted.
 */
export interface VersionAct extends Act {
  readonly act: 'version';
  readonly model: string;
  readonly revision: string;
  readonly record: ReleaseAct['record'];
}

export interface WithdrawAct extends Act {
  readonly act: 'withdraw';
  readonly model: string;
  readonly revision: string;
}

/** Not to be used from now: a model, or a row of the plant, or one lot of it. */
export interface HoldAct extends Act {
  readonly act: 'hold';
  /** `model`, or the section of the plant. */
  readonly table: string;
  readonly held: string;
  readonly lot?: string;
}

export interface LiftAct extends Act {
  readonly act: 'lift';
  readonly table: string;
  readonly held: string;
  readonly lot?: string;
}

/** Other limits for a while. */
export interface DeviationAct extends Act {
  readonly act: 'deviation';
  readonly model: string;
  /** Fact whose limits they are. */
  readonly fact: string;
  /** Both as text, in the unit of the card. */
  readonly was: string;
  readonly now: string;
  /** Last day, YYYY-MM-DD. */
  readonly until: string;
  /** For so many bodies at most: ticked off on the card. */
  readonly count?: number;
}

/** A list of orders was begun: what each model was made by then. */
export interface RunAct extends Act {
  readonly act: 'run';
  /** Each release once. */
  readonly by: readonly { readonly model: string; readonly revision: string }[];
  /** Numbers of the orders, in their sequence. */
  readonly orders: readonly string[];
}

export type Entry = ReleaseAct | VersionAct | WithdrawAct | HoldAct | LiftAct | DeviationAct | RunAct;

export const startText = (start: Start): string =>
  'date' in start ? `from ${start.date}` : `from order ${start.order}`;
