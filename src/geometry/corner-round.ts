/** A polygon with rounded corners as a true path of lines and arcs: each corner's arc is tangent to both its sides. */
import { SAME_POINT_MM, type Point } from './axes.ts';
import { arcFromEnds } from './arc.ts';
import type { Segment, Subpath } from './segment.ts';

export interface Corner {
  readonly xMm: number;
  readonly yMm: number;
  /** Radius at this corner, inside or outside corner alike; absent or 0: sharp. */
  readonly cornerMm?: number;
}

/** The corner as drawn: where its arc begins and ends, how far from the point, and whether it turns left. */
interface Rounded {
  readonly from: Point;
  readonly to: Point;
  readonly radius: number;
  readonly reach: number;
  readonly left: boolean;
}

/** The rounded outline, or the index of the corner whose arc doesn't fit between its neighbours. */
export function roundCorners(
  corners: readonly Corner[],
): { readonly ok: true; readonly subpath: Subpath } | { readonly ok: false; readonly corner: number } {
  const count = corners.length;
  const rounded = corners.map((corner, i) =>
    roundOne(corners[(i + count - 1) % count]!, corner, corners[(i + 1) % count]!),
  );
  const segments: Segment[] = [];
  for (const [i, corner] of rounded.entries()) {
    const next = rounded[(i + 1) % count]!;
    const side = distance(corners[i]!, corners[(i + 1) % count]!);
    // Not ≤, so that a corner that can't be rounded at all (its reach is not a number) is caught too.
    if (!(corner.reach + next.reach <= side + SAME_POINT_MM)) {
      return { ok: false, corner: corner.reach >= next.reach ? i : (i + 1) % count };
    }
    const bend = { radiusX: corner.radius, radiusY: corner.radius, rotationDeg: 0, large: false, sweep: corner.left };
    const arc = arcFromEnds({ from: corner.from, to: corner.to, ...bend });
    if (arc !== undefined) segments.push(arc);
    segments.push({ kind: 'line', from: corner.to, to: next.from });
  }
  return { ok: true, subpath: { segments, closed: true } };
}

function roundOne(before: Corner, corner: Corner, after: Corner): Rounded {
  const radius = corner.cornerMm ?? 0;
  const at = { x: corner.xMm, y: corner.yMm };
  if (radius === 0) return { from: at, to: at, radius, reach: 0, left: true };
  const [back, ahead] = [towards(corner, before), towards(corner, after)];
  // Half the angle between the sides; the arc touches them at radius / tan of it.
  const half = Math.atan2(
    Math.hypot(back.x - ahead.x, back.y - ahead.y),
    Math.hypot(back.x + ahead.x, back.y + ahead.y),
  );
  const reach = radius / Math.tan(half);
  return {
    from: { x: at.x + reach * back.x, y: at.y + reach * back.y },
    to: { x: at.x + reach * ahead.x, y: at.y + reach * ahead.y },
    radius,
    reach,
    left: ahead.x * back.y - ahead.y * back.x > 0,
  };
}

function towards(from: Corner, to: Corner): Point {
  const length = distance(from, to);
  return { x: (to.xMm - from.xMm) / length, y: (to.yMm - from.yMm) / length };
}

function distance(a: Corner, b: Corner): number {
  return Math.hypot(a.xMm - b.xMm, a.yMm - b.yMm);
}
