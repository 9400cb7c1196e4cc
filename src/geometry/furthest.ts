/** The point of some edges that is furthest from a region beside them. */
import type { Near } from './nearness.ts';
import { forEachEdge, type Region } from './polygon.ts';
import { edgeLine } from './solid/edge-line.ts';

/** Error of the distance, mm. */
const FURTHEST_MM = 0.001;

/**
 * The furthest point on the edges of `from`, none of which runs through the inside of `region`, and its distance from
 * the region, mm, short by 0.001 at most. Undefined where `from` is empty; both have no ring without points.
 *
 * Along an edge the distance can't change faster than the way along it, so over a stretch of length L it stays below
 * (d0 + d1 + L) / 2: stretches that can't be better are left, the others are halved.
 */
export function furthestFrom(region: Region, from: Region): Near | undefined {
  const lines = region.map((ring) => edgeLine(ring, true));
  const away = (x: number, y: number): number =>
    lines.reduce((least, line) => Math.min(least, line.at(x, y)), Infinity);
  let best: Near | undefined;
  const look = (x: number, y: number): number => {
    const distanceMm = away(x, y);
    if (best === undefined || distanceMm > best.distanceMm) best = { point: { x, y }, distanceMm };
    return distanceMm;
  };
  const halve = (x0: number, y0: number, d0: number, x1: number, y1: number, d1: number): void => {
    if ((d0 + d1 + Math.hypot(x1 - x0, y1 - y0)) / 2 <= best!.distanceMm + FURTHEST_MM) return;
    const [x, y] = [(x0 + x1) / 2, (y0 + y1) / 2];
    const d = look(x, y);
    halve(x0, y0, d0, x, y, d);
    halve(x, y, d, x1, y1, d1);
  };
  // Corners first: mostly one of them is the furthest, and then hardly anything is halved.
  const atCorners = from.map((ring) => {
    const distances: number[] = [];
    forEachEdge(ring, (x, y) => distances.push(look(x, y)));
    return distances;
  });
  from.forEach((ring, r) => {
    const distances = atCorners[r]!;
    forEachEdge(ring, (x0, y0, x1, y1, i) => {
      halve(x0, y0, distances[i]!, x1, y1, distances[(i + 1) % distances.length]!);
    });
  });
  return best;
}
