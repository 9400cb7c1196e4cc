/**
 * Offsets and booleans of regions (outer rings counter-clockwise, holes clockwise), done by clipper2-ts on a grid of
 * 1e-6 mm: the library's default of two decimals moves an area by square millimetres.
 */
import { Clipper, ClipType, EndType, FillRule, JoinType, type PathD, type PathsD } from '@countertype/clipper2-ts';
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
  return combine(ClipType.Intersection, a, b);
}

function combine(how: ClipType, a: Region, b: Region): Polygon[] {
  return fromPaths(Clipper.booleanOpD(how, toPaths(a), toPaths(b), FillRule.NonZero, DECIMALS));
}

function toPaths(region: Region): PathsD {
  return region.map((ring) => {
    const path: PathD = [];
    for (let i = 0; i < ring.length; i += 2) path.push({ x: ring[i]!, y: ring[i + 1]! });
    return path;
  });
}

function fromPaths(paths: PathsD): Polygon[] {
  return paths.map((path) => Float64Array.from(path.flatMap(({ x, y }) => [x, y])));
}
