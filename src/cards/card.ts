/**
 * A card as plain data: what a station reads, before any layout, language or date. Numbers are already text and carry the
 * fact they came from; everything said in words is the id of a line in the words file, with its arguments.
 *
 * Neither revision nor date nor status is in it: they are laid over it when it is printed.
 */
import type { Picture } from './picture.ts';

export type { ChartLines, ChartSheet } from './chart-sheet.ts';
export type { Picture };

/** A number without limits: `180.0` `mm`, repeated in the other system where there is one. */
export interface Figure {
  readonly kind: 'figure';
  readonly fact: string;
  readonly text: string;
  readonly unit: string;
  readonly second?: { readonly text: string; readonly unit: string };
}

/** A number with limits, rounded inward to what the gauge reads; the gauge's own unit first. */
export interface Limits {
  readonly kind: 'limits';
  readonly fact: string;
  readonly low: string;
  readonly high: string;
  readonly target: string;
  readonly unit: string;
  readonly second?: { readonly low: string; readonly high: string; readonly unit: string };
  /**
   * What a reading must lie inside to be accepted, where the plant asks for that: the limits drawn in by
   * the gauge's uncertainty on both sides. Neither the limits nor the target.
   */
  readonly acceptance?: {
    readonly low: string;
    readonly high: string;
    readonly unit: string;
    readonly second?: { readonly low: string; readonly high: string; readonly unit: string };
  };
}

/** A name somebody gave: a machine's title, a program number, a grade. Its digits are part of a name, no quantity. */
export interface Name {
  readonly kind: 'name';
  readonly text: string;
  /** The fact it came from. */
  readonly fact: string;
}

/** A numeral that is no quantity: one of the listed kinds. */
export interface Literal {
  readonly kind: 'literal';
  readonly of: 'point' | 'step' | 'scale' | 'standard' | 'fret' | 'picture';
  readonly text: string;
}

export interface Series {
  readonly kind: 'series';
  readonly items: readonly Arg[];
}

export type Arg = Figure | Limits | Name | Literal | Series | Line;

/** A line in words: the id of a sentence in the words file, and what goes into its {places}. */
export interface Line {
  readonly kind: 'line';
  readonly say: string;
  readonly with: Readonly<Record<string, Arg>>;
}

export interface KeyNumber {
  readonly label: Line;
  readonly value: Figure | Limits | Series;
}

export interface Check {
  readonly what: Line;
  /** Absent for a check by go/no-go or by eye. */
  readonly limits?: Limits;
  readonly gauge: Name | Line;
  readonly often: Line;
  /** Labels of the boxes for readings: numbered points, or one unlabelled box. */
  readonly boxes: readonly Literal[];
}

export interface Tool {
  readonly role: Line;
  readonly name: Arg;
}

export interface Caution {
  /** Signal word: a proposal until the plant's own assessment names it. */
  readonly signal: 'danger' | 'warning' | 'caution' | 'notice';
  readonly line: Line;
}

/** A long list: columns and rows, printed after page 1. */
export interface Table {
  readonly title: Line;
  readonly columns: readonly Line[];
  readonly rows: readonly (readonly Arg[])[];
  /** `first`: before the drawings, and not over two pages. `form`: filled in by hand, with room to write, on a page of forms. */
  readonly place?: 'first' | 'form';
}

/** What a line in a drawing is, whatever it looks like in print. */
export type LineKind =
  | 'outline'
  | 'saw-line'
  | 'centre'
  | 'hidden'
  | 'cut'
  | 'seam'
  | 'board'
  | 'glue'
  | 'cover'
  | 'relief'
  | 'contour'
  | 'leader'
  /** Of two states laid over each other: what is only in the one before, and only in the one after. */
  | 'was'
  | 'now';

/** What an area is. `left-thinnest` … `left-thick`: steps of how much wood is left, the thinnest first; `nothing`: none. */
export type Hatch =
  | 'cap'
  | 'back'
  | 'slab'
  | 'glue'
  | 'removed'
  | 'tack-zone'
  | 'gasket'
  | 'levelling-board'
  | 'left-thick'
  | 'left-thinner'
  | 'left-thin'
  | 'left-thinnest'
  | 'nothing';

/** Drawn things in millimetres of the real body; y upward. Coordinates are rounded to 0.01 mm. */
export type Mark =
  | { readonly kind: 'line'; readonly line: LineKind; readonly points: readonly number[]; readonly closed: boolean }
  | {
      readonly kind: 'circle';
      readonly line: LineKind;
      readonly x: number;
      readonly y: number;
      readonly radius: number;
    }
  /** A filled area, told apart by its hatching. */
  | {
      readonly kind: 'area';
      readonly hatch: Hatch;
      readonly points: readonly number[];
    }
  /** An area with holes in it: rings filled by the even-odd rule. */
  | { readonly kind: 'region'; readonly hatch: Hatch; readonly rings: readonly (readonly number[])[] }
  | {
      readonly kind: 'label';
      readonly x: number;
      readonly y: number;
      readonly text: Arg;
      readonly anchor: 'start' | 'middle' | 'end';
    }
  /** What a hole or a spot is called in the lists: printing puts it where there is room beside it. */
  | { readonly kind: 'tag'; readonly x: number; readonly y: number; readonly radius: number; readonly text: Arg }
  /** A dimension between two points, its line set off to the left of the way from the first to the second. */
  | {
      readonly kind: 'dimension';
      readonly from: readonly [number, number];
      readonly to: readonly [number, number];
      readonly offset: number;
      readonly text: Figure | Limits;
    }
  /** A numbered measuring point. */
  | { readonly kind: 'point'; readonly x: number; readonly y: number; readonly number: Literal };

export interface Drawing {
  readonly id: string;
  readonly caption: Line;
  /** Millimetres of the body per millimetre of paper: 5 means 1:5. ISO 5455 has 1, 2, 5, 10; 2.5 lies between them, and a body fills a page at it. */
  readonly scale: 1 | 2 | 2.5 | 5 | 10;
  readonly marks: readonly Mark[];
}

/** Which card this is: the key under which it keeps its place through revisions. */
export interface CardKey {
  readonly model: string;
  readonly hand: 'right' | 'left';
  /** Ids of the finishes it holds for. */
  readonly finishes: readonly string[];
  readonly station: string;
}

export interface Card extends CardBody {
  readonly key: CardKey;
  readonly model: Name;
  readonly station: Name;
  /** Only where the model is made in both hands. */
  readonly handLine?: Line;
  readonly finishNames: readonly Name[];
  readonly decides: Name;
  /** When a reading counts as in; absent where nothing is measured against limits. */
  readonly accepts?: Line;
  /** In the order of their numbers; absent where there is none. */
  readonly pictures?: readonly Picture[];
  /** Notes in the engineer's or the plant's own words. */
  readonly notes: readonly Name[];
  /** Cautions that somebody lets stand. */
  readonly permits: readonly Line[];
}

/** What a station's own file makes of a model. */
export interface CardBody {
  readonly keyNumbers: readonly KeyNumber[];
  readonly steps: readonly Line[];
  readonly tools: readonly Tool[];
  readonly checks: readonly Check[];
  readonly whenOut: readonly Line[];
  readonly cautions: readonly Caution[];
  readonly drawings: readonly Drawing[];
  readonly tables: readonly Table[];
  readonly signOff: readonly Line[];
}

/** The station sheet: a row a model, what really hangs at the sander and the press. */
export interface StationSheet {
  readonly station: { readonly id: string; readonly name: Name };
  readonly columns: readonly Line[];
  readonly rows: readonly { readonly key: CardKey; readonly model: Name; readonly cells: readonly Arg[] }[];
}

export type { CardChanges, Posting } from './posting.ts';
export type { FullSize, NamedSpot } from './full-size-face.ts';
export type { FirstPieceReport, FormCheck, Traveller, TravellerStation } from './form.ts';

/** A card with its code. */
export interface MadeCard {
  readonly card: Card;
  readonly code: string;
  /** Ids of all facts that were looked at to make it. */
  readonly reads: readonly string[];
}
