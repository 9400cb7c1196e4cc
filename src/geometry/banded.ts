/**
 * A region that is asked about many points. Its edges are kept by the bands of y they run through, so that a point meets the
 * few beside it and not all of them; what it says is said by the same sums.
 */
import { bounds } from './measure.ts';
import { isRightOf } from './nearness.ts';
import type { Region } from './polygon.ts';
import { forEachEdge } from './polygon.ts';

export interface Banded {
  /** As `regionContains`. */
  readonly contains: (x: number, y: number) => boolean;
  /** Whether an edge of any ring comes nearer to (x, y) than so many mm. */
  readonly edgeIsNearer: (x: number, y: number, mm: number) => boolean;
}

/** Height of a band at the least, mm: a lower one would hold the same edges again. */
const BAND_MM = 0.5;

/** x0, y0, x1, y1 of each edge, one after the other. */
const EDGE = 4;

export function banded(region: Region): Banded {
  const boxes = region.flatMap((ring) => bounds(ring) ?? []);
  const lowest = boxes.reduce((low, { minY }) => Math.min(low, minY), Infinity);
  const highest = boxes.reduce((high, { maxY }) => Math.max(high, maxY), -Infinity);
  const edges = region.reduce((sum, ring) => sum + ring.length / 2, 0);
  const bandMm = Math.max(BAND_MM, (highest - lowest) / edges);
  // It never falls as y rises, however it is rounded: an edge that a point meets is in a band the point asks.
  const bandOf = (y: number): number => Math.floor((y - lowest) / bandMm);
  const bands: number[][] = Array.from({ length: boxes.length === 0 ? 0 : bandOf(highest) + 1 }, () => []);
  for (const ring of region) {
    forEachEdge(ring, (x0, y0, x1, y1) => {
      const last = bandOf(Math.max(y0, y1));
      for (let band = bandOf(Math.min(y0, y1)); band <= last; band++) bands[band]!.push(x0, y0, x1, y1);
    });
  }
  return {
    contains: (x, y) => {
      const band = bands[bandOf(y)];
      if (band === undefined) return false;
      let inside = false;
      for (let i = 0; i < band.length; i += EDGE) {
        if (isRightOf(band[i]!, band[i + 1]!, band[i + 2]!, band[i + 3]!, x, y)) inside = !inside;
      }
      return inside;
    },
    edgeIsNearer: (x, y, mm) => {
      const last = Math.min(bands.length - 1, bandOf(y + mm));
      for (let at = Math.max(0, bandOf(y - mm)); at <= last; at++) {
        const band = bands[at]!;
        for (let i = 0; i < band.length; i += EDGE) {
          if (isNearer(band[i]!, band[i + 1]!, band[i + 2]!, band[i + 3]!, x, y, mm)) return true;
        }
      }
      return false;
    },
  };
}

/** Whether an edge comes nearer to (x, y) than so many mm: most are out of reach at a glance. */
function isNearer(x0: number, y0: number, x1: number, y1: number, x: number, y: number, mm: number): boolean {
  const outOfReach =
    (x0 > x + mm && x1 > x + mm) ||
    (x0 < x - mm && x1 < x - mm) ||
    (y0 > y + mm && y1 > y + mm) ||
    (y0 < y - mm && y1 < y - mm);
  if (outOfReach) return false;
  const dx = x1 - x0;
  const dy = y1 - y0;
  const squared = dx * dx + dy * dy;
  const t = squared === 0 ? 0 : Math.min(1, Math.max(0, ((x - x0) * dx + (y - y0) * dy) / squared));
  return Math.hypot(x0 + t * dx - x, y0 + t * dy - y) < mm;
}
