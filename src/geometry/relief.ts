/**
 * Relief cuts: straight cuts from outside into the bays where a saw line leaves wood, made before the line is sawn, so
 * that the wood there falls off in parts. A cut is a line here: that the blade's kerf has room in a narrow bay is not said.
 */
import type { Point } from './axes.ts';
import { baysOf, type Bay } from './bays.ts';
import { convexHull, leaves } from './hull.ts';
import { centroid } from './measure.ts';
import { openWay } from './open-way.ts';
import type { Polygon } from './polygon.ts';

export interface Relief {
  /** Where the cut enters the convex hull of the saw line: nothing is in its way further out. */
  readonly from: Point;
  /** The deepest point of the bay, on the plain line. */
  readonly to: Point;
  /** How much wood the saw line leaves in the bay at most, mm. */
  readonly leftMm: number;
}

export interface ReliefCuts {
  /**
   * Counter-clockwise about the centre, from the bay nearest the direction of the neck, +y; of two as near, from the one
   * on the side of +x.
   */
  readonly reliefs: readonly Relief[];
  /** Bays whose deepest point no straight cut from outside reaches, in the same order. */
  readonly blindBays: readonly { readonly at: Point; readonly leftMm: number }[];
}

/** Bearings nearer than this are one, rad. */
const SAME_RAD = 1e-6;

/** `line` is the closing of `plain` by the blade's radius, both counter-clockwise. Each cut lies midway between what bounds its way. */
export function reliefCuts(plain: Polygon, line: Polygon, bladeRadiusMm: number): ReliefCuts {
  const hull = convexHull(line);
  const bays = inOrder(baysOf(plain, line, bladeRadiusMm), centroid(plain)!).map((bay) => ({
    ...bay,
    way: openWay(bay.round),
  }));
  return {
    reliefs: bays.flatMap(({ deepest, leftMm, way }) =>
      way === undefined ? [] : [{ from: leaves(hull, deepest, way), to: deepest, leftMm }],
    ),
    blindBays: bays.flatMap(({ deepest, leftMm, way }) => (way === undefined ? [{ at: deepest, leftMm }] : [])),
  };
}

function inOrder(bays: readonly Bay[], centre: Point): Bay[] {
  /** Counter-clockwise from +y, −π to π. */
  const bearing = ({ deepest }: Bay): number => Math.atan2(centre.x - deepest.x, deepest.y - centre.y);
  const round = bays.toSorted((a, b) => bearing(a) - bearing(b));
  const least = Math.min(...round.map((bay) => Math.abs(bearing(bay))));
  const start = round.findIndex((bay) => Math.abs(bearing(bay)) <= least + SAME_RAD);
  return [...round.slice(start), ...round.slice(0, start)];
}
