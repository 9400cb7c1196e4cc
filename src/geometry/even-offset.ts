/**
 * An offset that treats left and right alike: the corners of its round joins lie in fixed directions, so the offset of a
 * mirrored region is the mirrored offset. The library's own round joins (offset.ts) start afresh at each corner and run
 * one way, which moves the line by up to the arc tolerance when a region is mirrored.
 *
 * Each edge is moved square to itself and joined to the next; the library then keeps what is wound round the right way
 * (fill rule "positive"). An offset takes milliseconds for an outline of 500 points.
 */
import { Clipper, ClipType, FillRule, type PathD, type PathsD } from '@countertype/clipper2-ts';
import { SAME_POINT_MM } from './axes.ts';
import { fromPaths } from './clipper-paths.ts';
import { ARC_TOLERANCE_MM } from './offset.ts';
import type { Polygon, Region } from './polygon.ts';

const DECIMALS = 6;

/** An edge by where it starts, its length, and its outward unit normal (right of the way it runs). */
interface Edge {
  readonly x: number;
  readonly y: number;
  readonly length: number;
  readonly nx: number;
  readonly ny: number;
}

/**
 * The line at a distance from the edge: outwards where distanceMm is positive, inwards where negative, corners rounded.
 * Distances are true to 3e-6 mm (a grid of 1e-6, as in offset.ts); round joins lie inside the true arc by up to
 * arcToleranceMm, which is above zero. Mirroring left to right or top to bottom mirrors the result to the grid.
 */
export function evenOffset(region: Region, distanceMm: number, arcToleranceMm = ARC_TOLERANCE_MM): Polygon[] {
  if (!Number.isFinite(distanceMm)) throw new RangeError('an offset distance must be finite');
  const stepRad = evenStep(Math.abs(distanceMm), arcToleranceMm);
  const rings = region.map(edgesOf).filter((edges) => edges.length > 2);
  const raw: PathsD = rings.map((edges) => moved(edges, distanceMm, stepRad));
  return fromPaths(Clipper.booleanOpD(ClipType.Union, raw, [], FillRule.Positive, DECIMALS));
}

/** The widest even share of a turn whose chord keeps the tolerance, sagitta r · (1 − cos(step/2)); 4k steps a turn. */
function evenStep(radiusMm: number, toleranceMm: number): number {
  const widest = 4 * Math.asin(Math.sqrt(Math.min(0.5, toleranceMm / (2 * radiusMm || 1))));
  return Math.PI / (2 * Math.ceil(Math.PI / (2 * widest)));
}

function edgesOf(ring: Polygon): Edge[] {
  const edges: Edge[] = [];
  // From the last point to the first, so that a point that repeats the one before it is dropped.
  let [x, y] = [ring.at(-2) ?? 0, ring.at(-1) ?? 0];
  for (let i = 0; i < ring.length; i += 2) {
    const [dx, dy] = [ring[i]! - x, ring[i + 1]! - y];
    const length = Math.hypot(dx, dy);
    if (length < SAME_POINT_MM) continue;
    edges.push({ x, y, length, nx: dy / length, ny: -dx / length });
    [x, y] = [ring[i]!, ring[i + 1]!];
  }
  return edges;
}

function moved(edges: readonly Edge[], distanceMm: number, stepRad: number): PathD {
  const path: PathD = [];
  edges.forEach((edge, i) => join(edges.at(i - 1)!, edge, distanceMm, stepRad, path));
  return path;
}

/** Adds what joins two moved edges at the corner between them. */
function join(before: Edge, after: Edge, d: number, stepRad: number, path: PathD): void {
  const { x, y } = after;
  const turnRad = Math.atan2(before.nx * after.ny - before.ny * after.nx, before.nx * after.nx + before.ny * after.ny);
  const short = Math.abs(d * Math.tan(turnRad / 2));
  if (turnRad * d < 0 && 2 * short <= Math.min(before.length, after.length)) {
    // The moved edges cross well within both: straight to the crossing.
    const k = d / (1 + before.nx * after.nx + before.ny * after.ny);
    path.push({ x: x + k * (before.nx + after.nx), y: y + k * (before.ny + after.ny) });
    return;
  }
  path.push({ x: x + d * before.nx, y: y + d * before.ny });
  // By way of the corner itself: what is cut off there is wound the wrong way round, and goes.
  if (turnRad * d < 0) path.push({ x, y });
  else addArc(x, y, d, Math.atan2(before.ny, before.nx), turnRad, stepRad, path);
  path.push({ x: x + d * after.nx, y: y + d * after.ny });
}

/** The points in even directions that lie strictly between two normals. */
function addArc(x: number, y: number, d: number, fromRad: number, turnRad: number, stepRad: number, path: PathD): void {
  const way = Math.sign(turnRad);
  const [from, to] = [(way * fromRad) / stepRad, (way * (fromRad + turnRad)) / stepRad];
  for (let k = Math.floor(from) + 1; k < to; k++) {
    const angle = way * k * stepRad;
    path.push({ x: x + d * Math.cos(angle), y: y + d * Math.sin(angle) });
  }
}
