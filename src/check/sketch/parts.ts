/** Neck, bridge and other parts, as far as a sketch needs them. */
import type { SketchMark } from '../../findings/sketch.ts';
import { polygon, rect, shape } from './wood.ts';

/**
 * The heel of a neck from the side, the end of its fingerboard over the body: the heel stands on `floor`, its board lies at
 * `top`. To the right it goes on.
 */
export const neckSide = ({
  heel,
  floor,
  board,
  top,
  lean = 0,
}: {
  /** Left end of the heel, and of the board. */
  readonly heel: number;
  readonly board: number;
  readonly floor: number;
  /** Underside of the fingerboard. */
  readonly top: number;
  /** How far it rises to the right end of the sketch. */
  readonly lean?: number;
}): SketchMark[] => [
  ...shape(
    polygon(
      [heel, floor],
      [heel, top],
      [59, top - lean],
      [59, floor - 4 - lean],
      [53, floor - 2 - lean * 0.9],
      [51, floor - lean * 0.8],
    ),
    'cap',
    'edge',
  ),
  ...shape(polygon([board, top], [board, top - 1.8], [59, top - 1.8 - lean], [59, top - lean]), 'metal', 'edge'),
];

/** A potentiometer under its panel, the shaft upward. */
export const pot = (x: number, panel: number, shaft = 7): SketchMark[] => [
  ...shape(rect(x - 1.2, panel - shaft, x + 1.2, panel), 'metal', 'edge'),
  ...shape(rect(x - 5, panel, x + 5, panel + 4.5, 0.5), 'metal', 'edge'),
];
