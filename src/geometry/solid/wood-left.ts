/** Wood left between what was cut: from a void to a face, to another void, to the side of the body. */
import { contains } from '../nearness.ts';
import { intersection } from '../offset.ts';
import { bounds, regionArea } from '../measure.ts';
import { boxesApart, polygonsApart } from '../apart.ts';
import type { Polygon, Region } from '../polygon.ts';
import { spanAt } from './column.ts';
import type { Lowest } from './lowest.ts';
import { lowestOver } from './lowest.ts';
import type { Pocket, Solid, Span, Tube, Void } from './solid.ts';
import { backAt, floorAt, topAt } from './solid.ts';

/** Where the least wood stands and how much; below zero: how far one reaches into the other. */
export interface Left {
  readonly mm: number;
  readonly xMm: number;
  readonly yMm: number;
  /** Upright through a floor, or across through a wall. */
  readonly through: 'floor' | 'wall';
  /** Where they overlap in plan, mm²; 0 of a wall. */
  readonly sharedMm2: number;
}

/** Not looked at where two boxes are further apart than this, mm: no wall is ever in question there. */
export const FAR_MM = 40;

/** Least wood between a void and the top or back as shaped; undefined where the void opens to that face. */
export function leftToFace(solid: Solid, cut: Void, face: 'top' | 'back'): Left | undefined {
  if (cut.kind === 'pocket' && cut.opens === face) return undefined;
  const region = intersection(footprint(cut), [solid.outline]);
  if (region.length === 0) return undefined;
  const left = (x: number, y: number): number => {
    const span = spanAt(cut, x, y) ?? (cut.kind === 'pocket' ? pocketSpan(cut, y) : undefined);
    if (span === undefined) return Infinity;
    return face === 'top' ? topAt(solid, x, y) - span.high : span.low - backAt(solid, x, y);
  };
  return asLeft(lowestOver(region, left), 'floor', Math.abs(regionArea(region)));
}

function asLeft(lowest: Lowest | undefined, through: Left['through'], sharedMm2: number): Left | undefined {
  return lowest && { mm: lowest.value, xMm: lowest.xMm, yMm: lowest.yMm, through, sharedMm2 };
}

/** Least wood between a void and the side of the body; below zero where it comes out there. */
export function leftToSide(outline: Polygon, cut: Void): Left {
  const [ring] = footprint(cut);
  const { distanceMm, a } = polygonsApart(ring!, outline);
  let out = false;
  for (let i = 0; i < ring!.length && !out; i += 2) out = !contains(outline, ring![i]!, ring![i + 1]!);
  return { mm: out ? -distanceMm : distanceMm, xMm: a.x, yMm: a.y, through: 'wall', sharedMm2: 0 };
}

/** Least wood between two voids; undefined where they are far apart. */
export function leftBetween(a: Void, b: Void): Left | undefined {
  if (boxesApart(footprint(a)[0]!, footprint(b)[0]!) > FAR_MM) return undefined;
  if (a.kind === 'pocket' && b.kind === 'pocket') return betweenPockets(a, b);
  if (a.kind === 'tube' && b.kind === 'tube') return alongTube(a, (x, y, z) => awayFromAxis(b, x, y, z) - b.radiusMm);
  const [tube, pocket] = a.kind === 'tube' ? [a, b as Pocket] : [b as Tube, a as Pocket];
  return alongTube(tube, (x, y, z) => awayFromPocket(pocket, x, y, z));
}

function betweenPockets(a: Pocket, b: Pocket): Left {
  const shared = intersection(a.region, b.region);
  const sharedMm2 = Math.abs(regionArea(shared));
  if (sharedMm2 > TOUCHING_MM2) {
    // Floors are planes: the least lies at a corner.
    let best: Left | undefined;
    for (const ring of shared) {
      for (let i = 0; i < ring.length; i += 2) {
        const [xMm, yMm] = [ring[i]!, ring[i + 1]!];
        const mm = spansApart(pocketSpan(a, yMm), pocketSpan(b, yMm));
        if (best === undefined || mm < best.mm) best = { mm, xMm, yMm, through: 'floor', sharedMm2 };
      }
    }
    return best!;
  }
  const { distanceMm, a: at, b: other } = polygonsApart(a.region[0]!, b.region[0]!);
  const up = Math.max(0, spansApart(pocketSpan(a, at.y), pocketSpan(b, other.y)));
  const [xMm, yMm] = [(at.x + other.x) / 2, (at.y + other.y) / 2];
  return { mm: Math.hypot(distanceMm, up), xMm, yMm, through: 'wall', sharedMm2: 0 };
}

/** Edges that only touch share an area of rounding. */
const TOUCHING_MM2 = 1e-3;

/** mm of wood between two spans, below zero by how far they overlap. */
const spansApart = (a: Span, b: Span): number => Math.max(b.low - a.high, a.low - b.high);

function pocketSpan(pocket: Pocket, y: number): Span {
  const floor = floorAt(pocket.floor, y);
  if (pocket.opens === 'back') return { low: -Infinity, high: floor };
  return { low: floor, high: pocket.opens === 'top' ? Infinity : pocket.roofMm! };
}

/** Steps along a tube, mm. */
const STEP_MM = 0.25;

/** The least along the axis, less the radius; round ends, so at the ends it may say up to a radius too little. */
function alongTube({ from, to, radiusMm }: Tube, away: (x: number, y: number, z: number) => number): Left {
  const steps = Math.max(1, Math.ceil(Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm, to.zMm - from.zMm) / STEP_MM));
  let best: Left | undefined;
  for (let i = 0; i <= steps; i++) {
    const t = i / steps;
    const xMm = from.xMm + t * (to.xMm - from.xMm);
    const yMm = from.yMm + t * (to.yMm - from.yMm);
    const mm = away(xMm, yMm, from.zMm + t * (to.zMm - from.zMm)) - radiusMm;
    if (best === undefined || mm < best.mm) best = { mm, xMm, yMm, through: 'wall', sharedMm2: 0 };
  }
  return best!;
}

/** From a point to the nearest of a pocket; below zero inside it, by how far it is from leaving upright. */
function awayFromPocket(pocket: Pocket, x: number, y: number, z: number): number {
  const span = pocketSpan(pocket, y);
  const up = Math.max(span.low - z, z - span.high);
  const inside = pocket.region.filter((ring) => contains(ring, x, y)).length % 2 === 1;
  if (inside) return up;
  const across = polygonsApart(Float64Array.of(x, y), pocket.region[0]!).distanceMm;
  return Math.hypot(across, Math.max(0, up));
}

function awayFromAxis({ from, to }: Tube, x: number, y: number, z: number): number {
  const [dx, dy, dz] = [to.xMm - from.xMm, to.yMm - from.yMm, to.zMm - from.zMm];
  const [px, py, pz] = [x - from.xMm, y - from.yMm, z - from.zMm];
  const t = Math.min(1, Math.max(0, (px * dx + py * dy + pz * dz) / (dx * dx + dy * dy + dz * dz)));
  return Math.hypot(px - t * dx, py - t * dy, pz - t * dz);
}

/** What a void covers in plan. */
export function footprint(cut: Void): Region {
  if (cut.kind === 'pocket') return cut.region;
  const { from, to, radiusMm } = cut;
  const [dx, dy] = [to.xMm - from.xMm, to.yMm - from.yMm];
  const length = Math.hypot(dx, dy);
  const [nx, ny] = [(-dy / length) * radiusMm, (dx / length) * radiusMm];
  const corners = [
    from.xMm - nx,
    from.yMm - ny,
    to.xMm - nx,
    to.yMm - ny,
    to.xMm + nx,
    to.yMm + ny,
    from.xMm + nx,
    from.yMm + ny,
  ];
  return [Float64Array.from(corners)];
}

/** The box of a void in plan. */
export const boxOf = (cut: Void) => bounds(footprint(cut)[0]!)!;
