/**
 * The least value of a smooth function over a region: looked for on a grid inside and along the edge, then refined about the
 * best places. Right to about 0.001 mm for heights of a body, which rise by less than 1 mm in 1 mm.
 */
import { nearestOnRegion } from '../apart.ts';
import type { Point } from '../axes.ts';
import type { Banded } from '../banded.ts';
import { banded } from '../banded.ts';
import { bounds } from '../measure.ts';
import type { Region } from '../polygon.ts';
import { forEachEdge } from '../polygon.ts';

export interface Lowest {
  readonly xMm: number;
  readonly yMm: number;
  readonly value: number;
}

/** How far apart places are first looked at, mm. */
const LOOK_MM = 2;
/** So many of the best are refined to this step; two nearer to each other than this count as one. */
const PLACES = 8;
const APART_MM = 2.5 * LOOK_MM;
const ROUGH_MM = 0.05;
/** So many of those to this one. */
const BEST = 2;
const FINE_MM = 0.0005;

/**
 * Undefined where the region is empty. `f` may give Infinity where it does not apply; `also` are places to look at besides,
 * where what it applies to is narrow.
 */
export function lowestOver(
  region: Region,
  f: (x: number, y: number) => number,
  also: readonly Point[] = [],
): Lowest | undefined {
  const isIn = banded(region).contains;
  const looked: Lowest[] = [];
  const look = (xMm: number, yMm: number): void => {
    const value = f(xMm, yMm);
    if (value < Infinity) looked.push({ xMm, yMm, value });
  };
  for (const ring of region) alongEdge(ring, look);
  insideOf(region, isIn, look);
  for (const { x, y } of also) if (isIn(x, y)) look(x, y);
  const rough = spread(sorted(looked)).map((start) => refine(region, isIn, f, start, LOOK_MM / 2, ROUGH_MM));
  const best = sorted(rough).slice(0, BEST);
  return sorted(best.map((start) => refine(region, isIn, f, start, ROUGH_MM, FINE_MM)))[0];
}

const sorted = (places: readonly Lowest[]): readonly Lowest[] => places.toSorted((a, b) => a.value - b.value);

/**
 * The best, each in a hollow of its own: many that lie in one would hide a deeper one elsewhere. Some look is no further than
 * LOOK_MM from the lowest place, so where heights rise by less than 1 in 1, none that lies higher above the best is that one.
 */
function spread(places: readonly Lowest[]): readonly Lowest[] {
  const kept: Lowest[] = [];
  for (const place of places) {
    if (kept.length === PLACES || place.value > places[0]!.value + LOOK_MM) break;
    const near = kept.some(({ xMm, yMm }) => Math.hypot(xMm - place.xMm, yMm - place.yMm) < APART_MM);
    if (!near) kept.push(place);
  }
  return kept;
}

function alongEdge(ring: Float64Array, look: (x: number, y: number) => void): void {
  forEachEdge(ring, (x0, y0, x1, y1) => {
    const steps = Math.max(1, Math.ceil(Math.hypot(x1 - x0, y1 - y0) / LOOK_MM));
    for (let i = 0; i < steps; i++) look(x0 + ((x1 - x0) * i) / steps, y0 + ((y1 - y0) * i) / steps);
  });
}

function insideOf(region: Region, isIn: Banded['contains'], look: (x: number, y: number) => void): void {
  const boxes = region.map((ring) => bounds(ring)!);
  const [maxX, maxY] = [Math.max(...boxes.map((box) => box.maxX)), Math.max(...boxes.map((box) => box.maxY))];
  for (let y = Math.min(...boxes.map((box) => box.minY)) + LOOK_MM / 2; y < maxY; y += LOOK_MM) {
    for (let x = Math.min(...boxes.map((box) => box.minX)) + LOOK_MM / 2; x < maxX; x += LOOK_MM) {
      if (isIn(x, y)) look(x, y);
    }
  }
}

const WAYS = Array.from({ length: 8 }, (_, k) => ({ x: Math.cos((k * Math.PI) / 4), y: Math.sin((k * Math.PI) / 4) }));

/** Steps to the lowest neighbour, then in half the step. A step that leads out of the region ends on its edge. */
function refine(
  region: Region,
  isIn: Banded['contains'],
  f: (x: number, y: number) => number,
  start: Lowest,
  fromMm: number,
  toMm: number,
): Lowest {
  let best = start;
  for (let step = fromMm; step > toMm;) {
    let next = best;
    for (const way of WAYS) {
      let x = best.xMm + step * way.x;
      let y = best.yMm + step * way.y;
      if (!isIn(x, y)) ({ x, y } = nearestOnRegion(region, x, y).point);
      const value = f(x, y);
      if (value < next.value) next = { xMm: x, yMm: y, value };
    }
    if (next === best) step /= 2;
    else best = next;
  }
  return best;
}
