/**
 * The least value of a smooth function over a region: looked for on a grid inside and along the edge, then refined about the
 * best places. Right to about 0.001 mm for heights of a body, which rise by less than 1 mm in 1 mm.
 */
import { bounds } from '../measure.ts';
import { regionContains } from '../nearness.ts';
import type { Region } from '../polygon.ts';
import { forEachEdge } from '../polygon.ts';

export interface Lowest {
  readonly xMm: number;
  readonly yMm: number;
  readonly value: number;
}

/** How far apart places are first looked at, mm. */
const LOOK_MM = 2;
/** How many of them are refined, and down to which step. */
const BEST = 6;
const FINE_MM = 0.0005;

/** Undefined where the region is empty. `f` may give Infinity where it does not apply. */
export function lowestOver(region: Region, f: (x: number, y: number) => number): Lowest | undefined {
  const looked: Lowest[] = [];
  const look = (xMm: number, yMm: number): void => {
    const value = f(xMm, yMm);
    if (value < Infinity) looked.push({ xMm, yMm, value });
  };
  for (const ring of region) {
    alongEdge(ring, look);
    insideOf(region, ring, look);
  }
  const best = looked.toSorted((a, b) => a.value - b.value).slice(0, BEST);
  return best.map((start) => refine(region, f, start)).toSorted((a, b) => a.value - b.value)[0];
}

function alongEdge(ring: Float64Array, look: (x: number, y: number) => void): void {
  forEachEdge(ring, (x0, y0, x1, y1) => {
    const steps = Math.max(1, Math.ceil(Math.hypot(x1 - x0, y1 - y0) / LOOK_MM));
    for (let i = 0; i < steps; i++) look(x0 + ((x1 - x0) * i) / steps, y0 + ((y1 - y0) * i) / steps);
  });
}

function insideOf(region: Region, ring: Float64Array, look: (x: number, y: number) => void): void {
  const { minX, minY, maxX, maxY } = bounds(ring)!;
  for (let y = minY + LOOK_MM / 2; y < maxY; y += LOOK_MM) {
    for (let x = minX + LOOK_MM / 2; x < maxX; x += LOOK_MM) if (regionContains(region, x, y)) look(x, y);
  }
}

/** Steps to the lowest neighbour, then in half the step, along the edge where the way down leads out of the region. */
function refine(region: Region, f: (x: number, y: number) => number, start: Lowest): Lowest {
  let best = start;
  for (let step = LOOK_MM / 2; step > FINE_MM;) {
    let next = best;
    for (let k = 0; k < 16; k++) {
      const angle = (k * Math.PI) / 8;
      const [x, y] = [best.xMm + step * Math.cos(angle), best.yMm + step * Math.sin(angle)];
      if (!regionContains(region, x, y)) continue;
      const value = f(x, y);
      if (value < next.value) next = { xMm: x, yMm: y, value };
    }
    if (next === best) step /= 2;
    else best = next;
  }
  return best;
}
