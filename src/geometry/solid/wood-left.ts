/** Wood left between what was cut: from a void to a face, to another void, to the side of the body. */
import { nearestOnRegion, regionsApart } from '../apart.ts';
import type { Point } from '../axes.ts';
import { banded } from '../banded.ts';
import { regionArea } from '../measure.ts';
import { difference, intersection } from '../offset.ts';
import type { Polygon, Region } from '../polygon.ts';
import { forEachEdge } from '../polygon.ts';
import { spansOver } from './column.ts';
import { footprint } from './footprint.ts';
import type { Lowest } from './lowest.ts';
import { lowestOver } from './lowest.ts';
import type { Solid, Void } from './solid.ts';
import { backAt, topAt } from './solid.ts';

export { FAR_MM, leftBetween } from './between.ts';
export { boxOf, footprint } from './footprint.ts';

/** Where the least wood stands and how much; below zero: how far one reaches into the other. */
export interface Left {
  readonly mm: number;
  readonly xMm: number;
  readonly yMm: number;
  /** Upright through a floor, or across through a wall. */
  readonly through: 'floor' | 'wall';
  /** Where they overlap in plan, mm²; 0 of a wall. */
  readonly sharedMm2: number;
  /** How upright the shortest way through the wood is: 1 straight up, 0 straight across. */
  readonly up: number;
}

/**
 * Least wood between a void and the top or back as shaped; undefined where the void opens to that face. `less`: where there is
 * nothing to be left, because something else opens there.
 */
export function leftToFace(solid: Solid, cut: Void, face: 'top' | 'back', less: Region = []): Left | undefined {
  if (cut.kind === 'pocket' && cut.opens === face) return undefined;
  const inside = inBody(solid, cut);
  const region = less.length > 0 ? difference(inside, less) : inside;
  if (region.length === 0) return undefined;
  const spanAt = spansOver(cut);
  const left = (x: number, y: number): number => {
    const span = spanAt(x, y);
    if (span === undefined) return Infinity;
    return face === 'top' ? topAt(solid, x, y) - span.high : span.low - backAt(solid, x, y);
  };
  return asLeft(lowestOver(region, left, axisOf(cut)), 'floor', Math.abs(regionArea(region)));
}

/** What of a void lies over the body in plan. */
function inBody(solid: Solid, cut: Void): Region {
  const own = plans.get(solid) ?? new WeakMap<Void, Region>();
  plans.set(solid, own);
  const region = own.get(cut) ?? intersection(footprint(cut), [solid.outline]);
  own.set(cut, region);
  return region;
}

/** Both faces of one body ask it of every cut, and none of them is written to. */
const plans = new WeakMap<Solid, WeakMap<Void, Region>>();

/** Places along a tube: one can be too narrow for a look on a grid to meet it. */
function axisOf(cut: Void): readonly Point[] {
  if (cut.kind === 'pocket') return [];
  const { from, to } = cut;
  const steps = Math.ceil(Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm)) + 1;
  return Array.from({ length: steps }, (_, i) => {
    const t = (i + 0.5) / steps;
    return { x: from.xMm + t * (to.xMm - from.xMm), y: from.yMm + t * (to.yMm - from.yMm) };
  });
}

function asLeft(lowest: Lowest | undefined, through: Left['through'], sharedMm2: number): Left | undefined {
  return lowest && { mm: lowest.value, xMm: lowest.xMm, yMm: lowest.yMm, through, sharedMm2, up: 1 };
}

/** Least wood between a void and the side of the body; below zero by how far it comes out there. */
export function leftToSide(outline: Polygon, cut: Void): Left {
  const region = footprint(cut);
  const [body, taken] = [banded([outline]), banded(region)];
  const out = furthest([
    ...cornersThat((x, y) => !body.contains(x, y), region, [outline]),
    ...cornersThat(taken.contains, [outline], region),
  ]);
  if (out) return { mm: 0 - out.distanceMm, xMm: out.x, yMm: out.y, through: 'wall', sharedMm2: 0, up: 0 };
  const { distanceMm, a } = regionsApart(region, [outline]);
  return { mm: distanceMm, xMm: a.x, yMm: a.y, through: 'wall', sharedMm2: 0, up: 0 };
}

interface Corner extends Point {
  readonly distanceMm: number;
}

/** Corners of a region that lie so, and how far from an edge. */
function cornersThat(lies: (x: number, y: number) => boolean, region: Region, edge: Region): readonly Corner[] {
  const corners: Corner[] = [];
  for (const ring of region) {
    forEachEdge(ring, (x, y) => {
      if (lies(x, y)) corners.push({ x, y, distanceMm: nearestOnRegion(edge, x, y).distanceMm });
    });
  }
  return corners;
}

function furthest(corners: readonly Corner[]): Corner | undefined {
  return corners.toSorted((a, b) => b.distanceMm - a.distanceMm)[0];
}
