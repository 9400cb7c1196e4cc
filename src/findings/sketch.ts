/**
 * A principle sketch of what a check finds wrong: marks in millimetres of paper, x to the right, y downward.
 * No words, so that it serves every language; drawn by print.
 */
export type At = readonly [x: number, y: number];

/** What an area is of. `air` is what was cut away: it covers what lies under it. */
export type SketchFill = 'air' | 'bed' | 'cap' | 'metal' | 'removed' | 'soft' | 'wood';

/**
 * `wall`: the outline of a cut, of which the air in it covers the inner half. `ideal`: where it should be. `wrong`: the
 * one heavy line.
 */
export type SketchLine = 'centre' | 'edge' | 'hidden' | 'ideal' | 'saw' | 'thin' | 'wall' | 'wrong';

export type SketchMark =
  | { readonly kind: 'shape'; readonly path: string; readonly fill?: SketchFill; readonly line?: SketchLine }
  | {
      readonly kind: 'arrow';
      readonly from: At;
      readonly to: At;
      readonly line: 'thin' | 'wrong';
      /** A head at `from` as well. */
      readonly both?: true;
    }
  /** White cross on a black disc: what is wrong, told without colour. */
  | { readonly kind: 'cross'; readonly at: At };

export interface Sketch {
  /** Upper left corner of the frame. */
  readonly from: At;
  readonly marks: readonly SketchMark[];
}

/** Every sketch has this frame. */
export const SKETCH_MM = { width: 60, height: 34 } as const;
