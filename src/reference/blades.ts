/**
 * Least radius a bandsaw blade follows, by its width. Commonly published by blade makers and shop manuals; the tables differ,
 * the larger value is taken here. Depends on the set of the teeth: a guide and no promise.
 */

/** Width and least radius, inches: three published tables, the largest radius of each width. */
const ROWS: readonly (readonly [widthIn: number, radiusIn: number])[] = [
  [1 / 8, 3 / 16],
  [3 / 16, 3 / 8],
  [1 / 4, 5 / 8],
  [3 / 8, 1.5],
  [1 / 2, 2.5],
  [5 / 8, 4],
  [3 / 4, 5.5],
  [1, 7.625],
];

export const BLADES_SOURCE =
  'blade width and least radius, tables of blade makers and shop manuals, the largest of each width';

const MM_PER_INCH = 25.4;

/** Between two widths the line between them; beyond the table the last two continued. Width in inches, radius in mm. */
export function leastConcaveRadiusMm(widthIn: number): number {
  const after = ROWS.findIndex(([width]) => width >= widthIn);
  const end = after < 0 ? ROWS.length - 1 : Math.max(after, 1);
  const [w0, r0] = ROWS[end - 1]!;
  const [w1, r1] = ROWS[end]!;
  return Math.max(0, r0 + ((widthIn - w0) * (r1 - r0)) / (w1 - w0)) * MM_PER_INCH;
}
