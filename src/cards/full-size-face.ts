/** A face of the body at full size, as plain data. */
import type { Arg, CardKey, Line, Mark, Name } from './card.ts';

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
