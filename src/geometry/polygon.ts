/**
 * A closed polygon as flat numbers: x0, y0, x1, y1, … in mm. The last point joins the first and isn't repeated.
 *
 * A Float64Array because height field, offsets and distances read tens of thousands of numbers in a row: one block of
 * doubles, no boxing, and its length can't grow by mistake. It is never written to after the function that made it
 * returns. It is working data: what is printed or saved is the path or shape it came from.
 */
export type Polygon = Float64Array;

/** Polygons that together bound an area: outer rings counter-clockwise, holes clockwise. */
export type Region = readonly Polygon[];

/** Calls `visit` for each edge in order, from the one that starts at point 0 to the closing one. */
export function forEachEdge(
  polygon: Polygon,
  visit: (x0: number, y0: number, x1: number, y1: number, index: number) => void,
): void {
  const count = polygon.length / 2;
  for (let i = 0; i < count; i++) {
    const next = i + 1 === count ? 0 : i + 1;
    visit(polygon[2 * i]!, polygon[2 * i + 1]!, polygon[2 * next]!, polygon[2 * next + 1]!, i);
  }
}

/** The same polygon walked the other way round, starting from its last point. */
export function reversed(polygon: Polygon): Polygon {
  const result = new Float64Array(polygon.length);
  for (let i = 0; i < polygon.length; i += 2) {
    result[i] = polygon[polygon.length - 2 - i]!;
    result[i + 1] = polygon[polygon.length - 1 - i]!;
  }
  return result;
}
