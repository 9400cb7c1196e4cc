/** The way of a drill back from where its channel starts, out of the cavity it starts in, into the open. */
import type { Banded } from '../banded.ts';
import { banded } from '../banded.ts';
import type { Point } from '../axes.ts';
import { liesInside } from '../lies-inside.ts';
import { contains } from '../nearness.ts';
import { intersection, union } from '../offset.ts';
import type { Polygon, Region } from '../polygon.ts';
import { shapePolygon } from '../shape.ts';
import type { Pocket, Tube } from './solid.ts';
import { floorAt } from './solid.ts';

export interface WayOut {
  /** From the start to where its axis comes out of the body, mm. */
  readonly mm: number;
  /** Where the shank meets wood on that way. */
  readonly stuck: Point | undefined;
}

/** Looks along the shank, mm. */
const STEP_MM = 1;
/** Halvings of a step: to a micrometre. */
const HALVINGS = 10;

/** `topMm`: the highest plane of the body, under which a chuck finds wood round it. */
export function wayOut(tube: Tube, outline: Polygon, cuts: readonly Pocket[], topMm: number): WayOut {
  const { from, to, radiusMm } = tube;
  const [dx, dy, dz] = [from.xMm - to.xMm, from.yMm - to.yMm, from.zMm - to.zMm];
  const length = Math.hypot(dx, dy, dz);
  const at = (way: number) => ({
    x: from.xMm + (way * dx) / length,
    y: from.yMm + (way * dy) / length,
    z: from.zMm + (way * dz) / length,
  });
  // In the open: beside the body, over its highest plane or under its back. A hair of the drill may still touch.
  const isOut = (way: number): boolean => {
    const { x, y, z } = at(way);
    return !contains(outline, x, y) || z >= topMm + radiusMm || z <= -radiusMm;
  };
  // Along the way the same cuts lie open over long stretches.
  const airs = new Map<string, Air>();
  for (let way = 0; ; way += STEP_MM) {
    if (isOut(way)) return { mm: way === 0 ? 0 : lastIn(isOut, way - STEP_MM, way), stuck: undefined };
    const { x, y, z } = at(way);
    const open = cuts.flatMap((cut, index) => (isOpenAt(cut, y, z, radiusMm) ? [index] : []));
    const key = open.join(' ');
    const air = airs.get(key) ?? airOf(open.flatMap((index) => cuts[index]!.region));
    airs.set(key, air);
    if (air.near.contains(x, y) && !air.near.edgeIsNearer(x, y, radiusMm)) continue;
    const disc = shapePolygon({ kind: 'circle', radiusMm }, { xMm: x, yMm: y }, 0.1);
    if (disc.ok && !liesInside(intersection([disc.polygon], [outline]), air.region))
      return { mm: way, stuck: { x, y } };
  }
}

function lastIn(isOut: (way: number) => boolean, inside: number, outside: number): number {
  let [low, high] = [inside, outside];
  for (let i = 0; i < HALVINGS; i += 1) {
    const middle = (low + high) / 2;
    if (isOut(middle)) high = middle;
    else low = middle;
  }
  return high;
}

/** What lies open at a place of the way: most of them are in the midst of it. */
interface Air {
  readonly region: Region;
  readonly near: Banded;
}

function airOf(open: Region): Air {
  const region = union(open, []);
  return { region, near: banded(region) };
}

/** Whether a pocket is empty from below the drill to above it, as far as it lies in the body. */
const isOpenAt = ({ opens, floor }: Pocket, y: number, z: number, radiusMm: number): boolean =>
  opens === 'top' ? floorAt(floor, y) <= z - radiusMm : opens === 'back' && floorAt(floor, y) >= z + radiusMm;
