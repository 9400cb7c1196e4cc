/**
 * The axes of every drawing, path and polygon in Platen.
 *
 * View: from the top of the body, as the player sees a body that lies on its back. Origin: where the centreline meets
 * the bridge line. +y runs along the centreline towards the neck, +x to the right in that view (the treble side of a
 * right-handed body). Angles are in degrees, counter-clockwise from +x. Lengths are millimetres held in doubles.
 *
 *                 neck
 *                  ^ +y
 *                  |
 *      bass        |       treble      (right-handed body)
 *                  |
 *     -------------o------------> +x   bridge line
 *                  |
 *                 tail
 *
 * SVG draws y downwards: flipping it is the printer's business, no function here knows of it. Path syntax is read in
 * these axes as it stands, so an arc's sweep flag of 1 turns counter-clockwise, towards growing angles.
 */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** Two points nearer than this are one point: a nanometre, the grid of the boolean and offset library (offset.ts). */
export const SAME_POINT_MM = 1e-6;

/**
 * Cosine and sine of an angle in degrees, exact at whole quarter turns so that turning a part by 90° or 180° adds no
 * rounding.
 */
export function direction(angleDeg: number): Point {
  switch (((angleDeg % 360) + 360) % 360) {
    case 0:
      return { x: 1, y: 0 };
    case 90:
      return { x: 0, y: 1 };
    case 180:
      return { x: -1, y: 0 };
    case 270:
      return { x: 0, y: -1 };
    default: {
      const angle = (angleDeg * Math.PI) / 180;
      return { x: Math.cos(angle), y: Math.sin(angle) };
    }
  }
}
