/** How large a picture prints: as large as goes into its box, its sides in proportion. */

/** Millimetres of paper. Two stand side by side on A4 and Letter. */
const BOX_MM = { width: 90, height: 70 };

export interface PrintedSize {
  readonly widthMm: number;
  readonly heightMm: number;
}

/** `width` and `height` in any one unit. */
export function printedSize({ width, height }: { readonly width: number; readonly height: number }): PrintedSize {
  const scale = Math.min(BOX_MM.width / width, BOX_MM.height / height);
  return { widthMm: width * scale, heightMm: height * scale };
}

/** Pixels to an inch of paper. */
export const dotsPerInch = (size: { readonly width: number; readonly height: number }): number =>
  size.width / (printedSize(size).widthMm / 25.4);
