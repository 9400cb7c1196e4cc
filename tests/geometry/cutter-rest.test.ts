import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cornerRestArea, cornerRestGap } from '../../src/geometry/corner.ts';
import { cutterRest, largestClearingRadius, REST_CHORD_MM } from '../../src/geometry/cutter-rest.ts';
import { regionArea, signedArea } from '../../src/geometry/measure.ts';
import { distanceToEdge, regionContains } from '../../src/geometry/nearness.ts';
import { difference, offset } from '../../src/geometry/offset.ts';
import type { Polygon, Region } from '../../src/geometry/polygon.ts';
import { shapePolygon, type Shape } from '../../src/geometry/shape.ts';
import { blob } from './polygons.ts';

/** Turned and moved, so that no wall lies along the grid. */
const ANYWHERE = { xMm: 12.345, yMm: -33.1, angleDeg: 17 };

function region(shape: Shape, chordMm = REST_CHORD_MM): Region {
  const made = shapePolygon(shape, ANYWHERE, chordMm);
  if (!made.ok) throw new Error(made.what);
  return [made.polygon];
}

/** A regular polygon of n corners, all alike. */
function regular(n: number, cornerMm: number): Region {
  const points = Array.from({ length: n }, (_, i) => {
    const angle = (2 * Math.PI * i) / n;
    return { xMm: 60 * Math.cos(angle), yMm: 60 * Math.sin(angle), cornerMm };
  });
  return region({ kind: 'polygon', points }, 1e-4);
}

/** Rest in one corner: cutter radius, drawn radius, mm; corners of a regular polygon. Source of each value beside it. */
const CORNERS = [
  { n: 4, cutter: 3, drawn: 0, area: 1.93142 }, // (R² − r²)(cot(θ/2) − (π − θ)/2), verified by polar integration
  { n: 4, cutter: 3.175, drawn: 1.5, area: 1.68047 }, // derived, verified by polar integration
  { n: 3, cutter: 6.35, drawn: 3.175, area: 20.71125 }, // derived, verified by polar integration
  { n: 4, cutter: 6.35, drawn: 3.175, area: 6.48996 }, // derived, verified by polar integration
  { n: 6, cutter: 6.35, drawn: 3.175, area: 1.62555 }, // derived, verified by polar integration
  { n: 4, cutter: 6.35, drawn: 0, area: 0.214602 * 6.35 ** 2 }, // a right angle: 1 − π/4
  { n: 4, cutter: 12.7, drawn: 6.35, area: 0.214602 * (12.7 ** 2 - 6.35 ** 2) }, // a right angle: 1 − π/4
] as const;

describe('rest in corners', () => {
  it.each(CORNERS)('of a regular $n-gon, cutter $cutter, drawn $drawn', ({ n, cutter, drawn, area }) => {
    const angleDeg = 180 - 360 / n;
    const found = cutterRest(regular(n, drawn), cutter);
    expect(found.rest.length).toBe(n);
    // As stated: 2e-4 mm times the edge, which is the drawn arc and the cut one and less than four cutter radii.
    expect(Math.abs(found.areaMm2 / n - area)).toBeLessThan(2e-4 * 4 * cutter);
    expect(Math.abs(found.gapMm - cornerRestGap(cutter, drawn, angleDeg))).toBeLessThan(1e-3);
  });

  it('the gap of 6.35 in 3.175 at a right angle is 1.315128', () => {
    // Derived from the two tangent arcs.
    expect(Math.abs(cutterRest(regular(4, 3.175), 6.35).gapMm - 1.315128)).toBeLessThan(1e-3);
  });

  it('the gap is at the corner', () => {
    const at = cutterRest([Float64Array.of(0, 0, 60, 0, 40, 50, 0, 30)], 6).gapAt;
    // The sharpest corner: between the base and the side that rises by 50 in 20.
    expect(at).toEqual({ x: 60, y: 0 });
  });

  it('none where the corners are as round as the cutter or rounder', () => {
    for (const cornerMm of [6.35, 6.4, 9, 20]) {
      const found = cutterRest(region({ kind: 'rectangle', lengthMm: 90, widthMm: 40, cornerMm }), 6.35);
      expect(found).toMatchObject({ rest: [], areaMm2: 0, gapMm: 0, gapAt: undefined });
    }
  });

  it('none at a corner that stands out into the cavity', () => {
    const found = cutterRest([Float64Array.of(0, 0, 60, 0, 60, 20, 20, 20, 20, 50, 0, 50)], 6);
    expect(found.rest.length).toBe(5);
    expect(found.areaMm2).toBeCloseTo(5 * cornerRestArea(6, 0, 90), 2);
    expect(found.rest.some((ring) => distanceToEdge(ring, 20, 20) < 5)).toBe(false);
    expect(regionContains(found.opened, 19.9, 19.9)).toBe(true);
  });

  it('none about an island, and all of the gap beside it that is too narrow', () => {
    const frame = [Float64Array.of(0, 0, 60, 0, 60, 60, 0, 60), Float64Array.of(20, 20, 20, 40, 40, 40, 40, 20)];
    expect(cutterRest(frame, 5).areaMm2).toBeCloseTo(4 * cornerRestArea(5, 0, 90), 2);
    const tooLarge = cutterRest(frame, 10.1);
    // In the four corners the disc of 10.1 still fits beside the island's corners, so that not all is left.
    expect(tooLarge.opened.length).toBe(4);
    expect(tooLarge.areaMm2 + regionArea(tooLarge.opened)).toBeCloseTo(3200, 0);
    expect(cutterRest(frame, 12).opened).toEqual([]);
    expect(cutterRest(frame, 12).areaMm2).toBe(3200);
    expect(cutterRest(frame, 12).rest.length).toBe(2);
  });
});

describe('a cutter of the cavity’s own size', () => {
  it.each([5, 6.34, 6.35])('clears a hole of radius 6.35: %f', (radiusMm) => {
    const found = cutterRest(region({ kind: 'circle', radiusMm: 6.35 }), radiusMm);
    expect(found).toMatchObject({ rest: [], areaMm2: 0, gapMm: 0 });
    expect(Math.abs(regionArea(found.opened) - Math.PI * 6.35 ** 2)).toBeLessThan(0.005 * 2 * Math.PI * 6.35);
  });

  it.each([6.36, 8])('leaves all of it when larger: %f', (radiusMm) => {
    const hole = region({ kind: 'circle', radiusMm: 6.35 });
    const found = cutterRest(hole, radiusMm);
    expect(found).toMatchObject({ opened: [], gapMm: Infinity, gapAt: undefined });
    expect(found.areaMm2).toBeCloseTo(regionArea(hole), 4);
  });

  it('clears a slot of its width with round ends, and leaves the corners of square ones', () => {
    expect(cutterRest(region({ kind: 'slot', lengthMm: 60, widthMm: 12.7 }), 6.35).areaMm2).toBe(0);
    const square = cutterRest(region({ kind: 'rectangle', lengthMm: 60, widthMm: 12.7 }), 6.35);
    expect(square.rest.length).toBe(4);
    // Short by what a radius smaller by 0.005 leaves less.
    expect(square.gapMm).toBeGreaterThan(cornerRestGap(6.345, 0, 90) - 1e-3);
    expect(square.gapMm).toBeLessThan(cornerRestGap(6.35, 0, 90));
    expect(square.areaMm2 / 4).toBeGreaterThan(cornerRestArea(6.345, 0, 90) - 5e-3);
    expect(square.areaMm2 / 4).toBeLessThan(cornerRestArea(6.35, 0, 90));
  });

  it('runs into an arm of its width', () => {
    // A pocket of 40 × 40 with an arm 12.7 wide and 50 long.
    const key = [ring('-20 0, 20 0, 20 40, 6.35 40, 6.35 90, -6.35 90, -6.35 40, -20 40')];
    expect(cutterRest(key, 6.35).areaMm2).toBeCloseTo(6 * cornerRestArea(6.35, 0, 90), 1);
    const tooWide = cutterRest(key, 6.4);
    expect(tooWide.areaMm2).toBeGreaterThan(50 * 12.7 - 20);
    // From the far corners to the disc that stands in the mouth and touches both its corners.
    const gap = (r: number) => Math.hypot(6.35, 50 + Math.sqrt(r ** 2 - 6.35 ** 2)) - r;
    expect(tooWide.gapMm).toBeGreaterThan(gap(6.395) - 1e-3);
    expect(tooWide.gapMm).toBeLessThan(gap(6.4) + 1e-3);
  });
});

describe('any region', () => {
  const radius = fc.double({ min: 1, max: 40, noNaN: true });

  it('is what is reached and the rest, and of what is reached a cutter hardly smaller leaves nothing', () => {
    fc.assert(
      fc.property(blob, radius, (polygon, radiusMm) => {
        const found = cutterRest([polygon], radiusMm);
        expect(regionArea(difference(found.opened, [polygon]))).toBeLessThan(2e-4 * 1500);
        // No dust: a disc of radius 0.0025 fits in each.
        for (const left of found.rest) expect(Math.abs(signedArea(left))).toBeGreaterThan(Math.PI * 0.0024 ** 2);
        const slivers = difference(difference([polygon], found.opened), found.rest);
        expect(Math.abs(regionArea([polygon]) - regionArea(found.opened) - found.areaMm2)).toBeLessThan(
          regionArea(slivers) + 2e-4 * 1500,
        );
        for (const sliver of slivers) expect(regionArea([sliver])).toBeLessThan(0.005);
        expect(cutterRest(found.opened, radiusMm - 0.01).areaMm2).toBe(0);
      }),
      { numRuns: 30 },
    );
  });

  it('lets a disc go where it is reached, and nowhere in the rest', () => {
    const spot = fc.double({ min: -150, max: 150, noNaN: true });
    const spots = fc.array(fc.tuple(spot, spot), { minLength: 40, maxLength: 40 });
    fc.assert(
      fc.property(blob, radius, spots, (polygon, radiusMm, places) => {
        const { opened, rest } = cutterRest([polygon], radiusMm);
        // By the library's own offset, for a cutter smaller by the 0.005 mm that count as fitting.
        const centres = offset([polygon], 0.005 - radiusMm);
        for (const [x, y] of places.filter(([px, py]) => regionContains([polygon], px, py))) {
          if (distanceToEdge(polygon, x, y) > radiusMm) {
            for (const [px, py] of onCircle(x, y, 0.999 * radiusMm)) {
              expect(regionContains(opened, px, py)).toBe(true);
              expect(regionContains(rest, px, py)).toBe(false);
            }
          }
          if (regionContains(opened, x, y)) expect(away(centres, x, y)).toBeLessThan(radiusMm);
        }
      }),
      { numRuns: 40 },
    );
  });

  it('has its gap where looking everywhere along the edge finds it', () => {
    fc.assert(
      fc.property(blob, radius, (polygon, radiusMm) => {
        const { opened, gapMm, gapAt } = cutterRest([polygon], radiusMm);
        const most = Math.max(...along(polygon, 2).map(([x, y]) => away(opened, x, y)));
        // But for slivers, which aren't looked into.
        expect(gapMm).toBeGreaterThanOrEqual(most - (gapMm === 0 ? 0.011 : 0.0015));
        // Between two places looked at it can't be further by more than half the way.
        expect(gapMm).toBeLessThanOrEqual(most + 1.001);
        if (gapAt !== undefined) expect(away(opened, gapAt.x, gapAt.y)).toBeCloseTo(gapMm, 3);
      }),
      { numRuns: 40 },
    );
  });

  it('leaves more to a larger cutter', () => {
    fc.assert(
      fc.property(blob, radius, radius, (polygon, a, b) => {
        const [small, large] = [Math.min(a, b), Math.max(a, b)].map((r) => cutterRest([polygon], r));
        // But for slivers that are just no longer counted.
        expect(large.areaMm2).toBeGreaterThan(small.areaMm2 - 0.3);
        expect(large.gapMm).toBeGreaterThanOrEqual(small.gapMm - 0.011);
      }),
      { numRuns: 30 },
    );
  });
});

it('the gap in a neck between two pockets is in its middle', () => {
  // Two pockets of 30 × 30 and a neck 4 wide and 40 long.
  const bell = ring('0 0, 30 0, 30 13, 70 13, 70 0, 100 0, 100 30, 70 30, 70 17, 30 17, 30 30, 0 30');
  const { gapMm, gapAt } = cutterRest([bell], 6);
  expect(gapAt?.x).toBeCloseTo(50, 1);
  // To the discs that touch both corners of the neck's mouths.
  const tip = 30 - Math.sqrt(36 - 4) + 6;
  expect(gapMm).toBeCloseTo(Math.hypot(50 - tip + 6, 2) - 6, 2);
});

describe('largest radius that clears', () => {
  it('leaves the gap asked for in a square corner', () => {
    // (R − r)(√2 − 1) ≤ gap.
    expect(largestClearingRadius(region({ kind: 'rectangle', lengthMm: 90, widthMm: 40 }), 1)).toBe(2.41);
    const rounded = region({ kind: 'rectangle', lengthMm: 90, widthMm: 40, cornerMm: 5 }, 2e-4);
    expect(largestClearingRadius(rounded, 0.2)).toBe(5.48);
    expect(largestClearingRadius(rounded, 0.5)).toBe(6.2);
  });

  it('is that of a hole or a slot itself', () => {
    expect(largestClearingRadius(region({ kind: 'circle', radiusMm: 6.35 }), 0.1)).toBe(6.35);
    expect(largestClearingRadius(region({ kind: 'slot', lengthMm: 60, widthMm: 8 }), 0.1)).toBe(4);
  });

  it('is zero where the sharpest corner lets none', () => {
    // 10 degrees: a gap of 10.5 R.
    const a = (10 * Math.PI) / 180;
    expect(largestClearingRadius([Float64Array.of(0, 0, 100, 0, 100 * Math.cos(a), 100 * Math.sin(a))], 0.02)).toBe(0);
    expect(largestClearingRadius([], 1)).toBe(0);
  });

  it('clears, and the next hundredth does not', () => {
    fc.assert(
      fc.property(blob, fc.double({ min: 0.05, max: 3, noNaN: true }), (polygon, gapMm) => {
        const radiusMm = largestClearingRadius([polygon], gapMm);
        if (radiusMm > 0) expect(cutterRest([polygon], radiusMm).gapMm).toBeLessThanOrEqual(gapMm);
        expect(cutterRest([polygon], (Math.round(100 * radiusMm) + 1) / 100).gapMm).toBeGreaterThan(gapMm);
      }),
      { numRuns: 20 },
    );
  });
});

it('a cutter without a radius is refused', () => {
  expect(() => cutterRest([], 0)).toThrow(RangeError);
  expect(() => cutterRest([], NaN)).toThrow(RangeError);
  expect(cutterRest([], 3)).toMatchObject({ opened: [], rest: [], gapMm: 0 });
});

function onCircle(x: number, y: number, radius: number): (readonly [number, number])[] {
  return Array.from({ length: 12 }, (_, i) => {
    const angle = (Math.PI * i) / 6;
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)] as const;
  });
}

/** Distance from a region, zero in it. */
function away(from: Region, x: number, y: number): number {
  if (regionContains(from, x, y)) return 0;
  return Math.min(...from.map((ring) => distanceToEdge(ring, x, y)));
}

/** Points along the edge, corners among them, no further apart than the step. */
function along(polygon: Polygon, stepMm: number): (readonly [number, number])[] {
  const points: (readonly [number, number])[] = [];
  for (let i = 0; i < polygon.length; i += 2) {
    const j = (i + 2) % polygon.length;
    const [dx, dy] = [polygon[j] - polygon[i], polygon[j + 1] - polygon[i + 1]];
    const steps = Math.ceil(Math.hypot(dx, dy) / stepMm);
    for (let k = 0; k < steps; k++) points.push([polygon[i] + (dx * k) / steps, polygon[i + 1] + (dy * k) / steps]);
  }
  return points;
}

/** Corners as 'x y, x y, …'. */
function ring(corners: string): Polygon {
  return Float64Array.from(corners.split(', ').flatMap((corner) => corner.split(' ').map(Number)));
}
