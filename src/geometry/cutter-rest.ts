/**
 * What a round cutter leaves of a cavity. What its disc can reach is the opening of the region by that disc: inwards by
 * the radius, which is where its centre may go, then outwards again. For one corner the exact formulas are in corner.ts.
 */
import type { Point } from './axes.ts';
import { evenOffset } from './even-offset.ts';
import { furthestFrom } from './furthest.ts';
import { bounds, regionArea, signedArea } from './measure.ts';
import { contains } from './nearness.ts';
import { difference, union } from './offset.ts';
import type { Polygon, Region } from './polygon.ts';

/** Flatten the region by this or finer, mm: else the corners of its polygon look like wood that is left. */
export const REST_CHORD_MM = 0.002;

/** Slivers thinner than this don't count, and a cutter goes where it is too large by less than this in radius, mm. */
const SLIVER_MM = 0.005;
const ARC_MM = 1e-4;
/** What the disc reaches is drawn this much too large, so that the grid of the offsets leaves no hairs along the walls. */
const HAIR_MM = 1.2e-4;

export interface CutterRest {
  /** What the cutter reaches, true to 2e-4 mm. */
  readonly opened: Region;
  /** The region less that, without its slivers. */
  readonly rest: Region;
  /** Of the rest, mm²: short by up to 2e-4 mm times the length of its edge. */
  readonly areaMm2: number;
  /** From the point of the rest that is furthest from what is reached, mm, true to 0.001; Infinity where nothing is. */
  readonly gapMm: number;
  /** That point; undefined where the gap is zero or Infinity. */
  readonly gapAt: Point | undefined;
}

/**
 * What a cutter of the radius, above zero, leaves of the region. Where the region is about as wide as the cutter, rest and
 * gap lie between those of the radius and of one smaller by 0.005 mm: a slot of the cutter's own width is cleared.
 */
export function cutterRest(region: Region, cutterRadiusMm: number): CutterRest {
  if (!(cutterRadiusMm > 0)) throw new RangeError('a cutter needs a radius above zero');
  const opened = reach(region, cutterRadiusMm);
  const rest = withoutSlivers(difference(region, opened));
  const areaMm2 = regionArea(rest);
  if (opened.length === 0) return { opened, rest, areaMm2, gapMm: rest.length === 0 ? 0 : Infinity, gapAt: undefined };
  const furthest = furthestFrom(opened, rest);
  return { opened, rest, areaMm2, gapMm: furthest?.distanceMm ?? 0, gapAt: furthest?.point };
}

/**
 * The largest radius, in whole hundredths of a mm, of a cutter that leaves no gap above the tolerance; zero where none is.
 * A smaller cutter reaches all that a larger one does, so halving finds it. Gaps below about 0.01 mm are slivers and
 * count as none.
 */
export function largestClearingRadius(region: Region, toleranceGapMm: number): number {
  const clears = (hundredths: number): boolean => cutterRest(region, hundredths / 100).gapMm <= toleranceGapMm;
  let low = 0;
  let high = Math.ceil(100 * mostRadius(region)) + 1;
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (clears(middle)) low = middle;
    else high = middle;
  }
  return low / 100;
}

/** Half the least side of the largest upright box round a ring: no disc in the region is larger. */
function mostRadius(region: Region): number {
  const halves = region.map((ring) => {
    const box = bounds(ring);
    return box === undefined ? 0 : Math.min(box.maxX - box.minX, box.maxY - box.minY) / 2;
  });
  return Math.max(0, ...halves);
}

function reach(region: Region, radiusMm: number): Polygon[] {
  const centres = evenOffset(region, -radiusMm, ARC_MM);
  const reached = evenOffset(centres, radiusMm + HAIR_MM, ARC_MM);
  const squeezed = squeezedCentres(region, radiusMm, centres);
  return squeezed.length === 0 ? reached : union(reached, evenOffset(squeezed, radiusMm + HAIR_MM - SLIVER_MM, ARC_MM));
}

/**
 * Where the centre may go only because the cutter is a hair too large: a slot as wide as the cutter has no inside left
 * when its walls are moved in by the radius. Corners of the centre's region move by a few slivers too, and aren't meant.
 */
function squeezedCentres(region: Region, radiusMm: number, centres: Region): Polygon[] {
  if (radiusMm <= SLIVER_MM) return [];
  const nearly = evenOffset(region, SLIVER_MM - radiusMm, ARC_MM);
  return difference(nearly, evenOffset(centres, 4 * SLIVER_MM, ARC_MM));
}

/** Outer rings that a small disc fits in, and the holes in them: a hole is one of the least ring round it. */
function withoutSlivers(region: Region): Polygon[] {
  const cores = evenOffset(region, -SLIVER_MM / 2);
  const outers = region.filter((ring) => signedArea(ring) > 0).toSorted((a, b) => signedArea(a) - signedArea(b));
  const kept = new Set(outers.filter((ring) => cores.some((core) => contains(ring, core[0]!, core[1]!))));
  const owner = (ring: Polygon): Polygon | undefined =>
    signedArea(ring) > 0 ? ring : outers.find((outer) => contains(outer, ring[0]!, ring[1]!));
  return region.filter((ring) => kept.has(owner(ring) ?? ring));
}
