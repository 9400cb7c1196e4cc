/**
 * Offsets and booleans of regions (outer rings counter-clockwise, holes clockwise), done by clipper2-ts on a grid of
 * 1e-6 mm: the library's default of two decimals moves an area by square millimetres.
 */
import { Clipper, ClipType, EndType, FillRule, JoinType } from '@countertype/clipper2-ts';
import { fromPaths, toPaths } from './clipper-paths.ts';
import type { Bounds } from './measure.ts';
import { bounds } from './measure.ts';
import type { Polygon, Region } from './polygon.ts';

const DECIMALS = 6;
/** The library needs a mitre limit even where every join is round; it isn't used. */
const MITRE_LIMIT = 2;

/** Default error of the round joins of an offset, mm: how far their chords may lie inside the true arc. */
export const ARC_TOLERANCE_MM = 0.001;

/**
 * The line at a distance from the edge: outwards where distanceMm is positive, inwards where negative, corners rounded.
 * Nothing is left where the region is narrower than twice an inward distance. Distances are true to 3e-6 mm (the grid's
 * rounding), round joins lie inside the true arc by up to arcToleranceMm, not less than 1e-6.
 */
export function offset(region: Region, distanceMm: number, arcToleranceMm = ARC_TOLERANCE_MM): Polygon[] {
  if (!Number.isFinite(distanceMm)) throw new RangeError('an offset distance must be finite');
  if (distanceMm === 0) return union(region, []);
  return fromPaths(
    Clipper.inflatePathsD(
      toPaths(region),
      distanceMm,
      JoinType.Round,
      EndType.Polygon,
      MITRE_LIMIT,
      DECIMALS,
      arcToleranceMm,
    ),
  );
}

/** What lies in either. */
export function union(a: Region, b: Region): Polygon[] {
  return combine(ClipType.Union, a, b);
}

/** What lies in `a` and not in `b`. */
export function difference(a: Region, b: Region): Polygon[] {
  return combine(ClipType.Difference, a, b);
}

/** What lies in both. */
export function intersection(a: Region, b: Region): Polygon[] {
  // Of most pairs that are asked about it is plain at a glance.
  if (areBeside(a, b)) return [];
  return combine(ClipType.Intersection, a, b);
}

/** Every ring of one lies beside every ring of the other: their boxes are further apart than the grid moves a point. */
function areBeside(a: Region, b: Region): boolean {
  const others = b.flatMap((ring) => bounds(ring) ?? []);
  return a
    .flatMap((ring) => bounds(ring) ?? [])
    .every((box) => others.every((other) => isLeftOrBelow(box, other) || isLeftOrBelow(other, box)));
}

const isLeftOrBelow = (a: Bounds, b: Bounds): boolean => b.minX - a.maxX > BESIDE_MM || b.minY - a.maxY > BESIDE_MM;

const BESIDE_MM = 1e-3;

function combine(how: ClipType, a: Region, b: Region): Polygon[] {
  return fromPaths(Clipper.booleanOpD(how, toPaths(a), toPaths(b), FillRule.NonZero, DECIMALS));
}
