import type { CardKey, Figure, Limits, Line, Name } from './card.ts';

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
