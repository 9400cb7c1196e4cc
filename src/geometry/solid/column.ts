/** What is met going up through a body at one point: layers of wood between what was cut. Exact; `field.ts` is the fast way. */
import { contains, regionContains } from '../nearness.ts';
import type { Solid, Span, Void } from './solid.ts';
import { backAt, pocketSpan, topAt, tubeSpan, tubeSpans } from './solid.ts';

/** Wood between two surfaces at a point. */
export interface Layer {
  readonly lowMm: number;
  readonly highMm: number;
  /** What lies below and above it: a void's id, `back` or `top`. */
  readonly under: string;
  readonly over: string;
}

/** Layers of wood from the back up; none outside the outline or where nothing is left. */
export function layersAt(solid: Solid, x: number, y: number): readonly Layer[] {
  if (!contains(solid.outline, x, y)) return [];
  const [bottom, top] = [backAt(solid, x, y), topAt(solid, x, y)];
  const cuts = solid.voids
    .map((cut) => ({ id: cut.id, span: spanAt(cut, x, y) }))
    .filter((cut): cut is { id: string; span: Span } => cut.span !== undefined)
    .toSorted((a, b) => a.span.low - b.span.low);
  const layers: Layer[] = [];
  let [at, under] = [bottom, 'back'];
  for (const { id, span } of cuts) {
    if (span.low > at && at < top)
      layers.push({ lowMm: at, highMm: Math.min(span.low, top), under, over: span.low < top ? id : 'top' });
    if (span.high > at) [at, under] = [span.high, id];
  }
  if (at < top) layers.push({ lowMm: at, highMm: top, under, over: 'top' });
  return layers;
}

/** What a void takes at a point; a pocket that opens to a face goes on beyond it. */
export function spanAt(cut: Void, x: number, y: number): Span | undefined {
  if (cut.kind === 'tube') return tubeSpan(cut, x, y);
  return regionContains(cut.region, x, y) ? pocketSpan(cut, y) : undefined;
}

/** What it takes at many points of its footprint: all over its region, on the very edge too, a pocket goes as deep. */
export const spansOver = (cut: Void): ((x: number, y: number) => Span | undefined) =>
  cut.kind === 'pocket' ? (_, y) => pocketSpan(cut, y) : tubeSpans(cut);
