/** What is printed beside the cards, as plain data: forms for control charts, templates at full size. */
import type { Arg, CardKey, Figure, Limits, Line, Mark, Name } from './card.ts';

/** A form for control charts of one thing that a station measures. */
export interface ChartSheet {
  readonly key: CardKey;
  readonly model: Name;
  readonly station: Name;
  readonly handLine?: Line;
  readonly what: Line;
  /** What stands in the column `fact` of the readings. */
  readonly fact: string;
  readonly limits: Limits;
  readonly gauge: Name | Line;
  readonly often: Line;
  /** Pieces in a sample. */
  readonly size: number;
  /** What came of the readings so far; none before the first. */
  readonly found: readonly Line[];
  /** Where known: the three lines of each chart. */
  readonly means?: ChartLines;
  readonly ranges?: ChartLines;
}

/** Lowest, middle and highest line, with where each lies in the unit of the gauge. */
export type ChartLines = readonly { readonly at: number; readonly figure: Figure }[];

/** A face of the body at full size, to check by and to make patterns from. No card: it has no code, and binds nobody. */
export interface FullSize {
  readonly model: string;
  readonly hand: CardKey['hand'];
  readonly face: 'top' | 'back' | 'glue-face';
  readonly title: Name;
  /** Its length and width, to be measured on what was put together. */
  readonly size: Line;
  /** As seen on that face; the outline first. */
  readonly marks: readonly Mark[];
  readonly names: readonly NamedSpot[];
}

/** Something in a drawing that bears its name; mm of the body as drawn. */
export interface NamedSpot {
  readonly x: number;
  readonly y: number;
  /** Of a hole, whose centre is marked and whose name stands beside it. Of anything else nothing. */
  readonly radius: number;
  /** Of a cavity, whose name stands inside it. */
  readonly edge?: readonly number[];
  readonly text: Arg;
  /** Cut from the face that is drawn, or a line of it. */
  readonly own: boolean;
}
