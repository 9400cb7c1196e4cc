/**
 * Forms as plain data: what people write on. None of them is a card, and none has a code of its own; what they say of limits
 * is what the cards say.
 */
import type { Arg, CardKey, Check, Line, Name, Table } from './card.ts';

/** A check as a form has it: in the unit of its gauge alone, as what is read there is written here. */
export interface FormCheck extends Check {
  /** A reading in each box; or a tick, where it is judged by eye, by a go-pin or by a gauge that only passes. */
  readonly how: 'written' | 'ticked';
}

/** What goes with one order through the stations: which cards it is made by, and what was read of it. */
export interface Traveller {
  readonly model: Name;
  readonly hand: 'right' | 'left';
  /** Empty where it is written in by hand; so are all of the next. */
  readonly order: string;
  /** Of the cap's halves and the back that belong together; absent where nothing is paired. */
  readonly pair?: string;
  readonly finish: string;
  readonly grade: string;
  readonly quantity: number;
  /** Which of several bodies; absent where that is written in. */
  readonly body?: string;
  /** In the order of the route. */
  readonly stations: readonly TravellerStation[];
}

export interface TravellerStation {
  readonly id: string;
  readonly name: Name;
  /** Of the card that must hang there. */
  readonly code: string;
  /** How often most of its checks are made; absent where nothing is checked on the piece. */
  readonly often?: Line;
  readonly checks: readonly FormCheck[];
  /** Where the order number on the wood is written, or is lost: in the words of the card. */
  readonly marks: readonly Line[];
}

/** The first piece after a set-up, at one station: what was set up, what was measured, who let the run go on. */
export interface FirstPieceReport {
  readonly key: CardKey;
  readonly model: Name;
  readonly station: Name;
  readonly handLine?: Line;
  /** The machine its card names, with its id; absent where the station has none. */
  readonly machine?: { readonly id: string; readonly name: Name };
  readonly code: string;
  /** What must be so, beside room for what is. */
  readonly setUp: readonly { readonly what: Line; readonly must: Arg }[];
  /** Cutters in their order, as the set-up sheet of the card has them. */
  readonly cutters?: Pick<Table, 'columns' | 'rows'>;
  readonly gauges: readonly Name[];
  readonly checks: readonly FormCheck[];
  readonly accepts?: Line;
  readonly whenOut: readonly Line[];
  readonly decides: Name;
}
