/** No text over another. */
import { depthInto, edgesOf, type Point, type Quad } from './quad.ts';

/** Boxes that touch by less are two texts beside each other: a browser sets to whole pixels, 0.26 mm. */
const TOUCH_MM = 0.2;

interface Placed {
  readonly text: string;
  readonly quad: Quad;
}

/** Pairs of texts that lie in each other, each named. */
export function overlapping(texts: Iterable<Placed>): string[] {
  const sorted = once(texts)
    .map((one) => ({ ...one, edges: edgesOf(one.quad) }))
    .toSorted((a, b) => a.edges.top - b.edges.top);
  return sorted.flatMap((one, i) => {
    const found: string[] = [];
    for (let k = i + 1; k < sorted.length && sorted[k]!.edges.top < one.edges.bottom; k++) {
      const other = sorted[k]!;
      const depth = depthInto(one.quad, other.quad);
      if (depth > TOUCH_MM) found.push(`${depth.toFixed(1)} mm in each other: "${one.text}" and "${other.text}"`);
    }
    return found;
  });
}

export const placed = (texts: readonly { readonly text: string; readonly quads: readonly Quad[] }[]): Placed[] =>
  texts.flatMap(({ text, quads }) => quads.map((quad) => ({ text, quad })));

/** A text with a halo is drawn twice on paper, at the same place: that is one text. */
function once(texts: Iterable<Placed>): Placed[] {
  const at = ({ x, y }: Point): string => `${Math.round(x * 10)} ${Math.round(y * 10)}`;
  return [...new Map([...texts].map((one) => [`${one.text} ${at(one.quad[0])} ${at(one.quad[2])}`, one])).values()];
}
