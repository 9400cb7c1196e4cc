import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as Flatten from '@flatten-js/core';
import { perimeter, regionArea, signedArea } from '../../src/geometry/measure.ts';
import { distanceToEdge, regionContains } from '../../src/geometry/nearness.ts';
import { ARC_TOLERANCE_MM, difference, intersection, offset, union } from '../../src/geometry/offset.ts';
import type { Polygon } from '../../src/geometry/polygon.ts';
import { blob, convex } from './polygons.ts';

/**
 * Rounding to the library's grid of 1e-6 mm moves a point by up to 0.71e-6. It happens to the polygon's corners, to the
 * corners of the moved edges, where those cross, and once more where two crossings fall on one edge.
 */
const GRID_MM = 4 * Math.SQRT1_2 * 1e-6;
const away = fc.double({ min: 0.5, max: 40, noNaN: true });

describe('outward', () => {
  it('of a convex polygon has the area A + P d + π d² (Steiner) to 0.01 %', () => {
    fc.assert(
      fc.property(convex, away, (polygon, d) => {
        const exact = signedArea(polygon) + perimeter(polygon) * d + Math.PI * d * d;
        const grown = offset([polygon], d);
        expect(grown.length).toBe(1);
        expect(Math.abs(regionArea(grown) - exact) / exact).toBeLessThan(1e-4);
        expect(Math.abs(perimeter(grown[0]) - (perimeter(polygon) + 2 * Math.PI * d))).toBeLessThan(
          1e-3 * perimeter(polygon),
        );
      }),
    );
  });

  it('lies at its distance everywhere, joins inside by no more than the arc tolerance', () => {
    fc.assert(
      fc.property(blob, away, fc.constantFrom(0.001, 0.01, 0.1), (polygon, d, tolerance) => {
        for (const ring of offset([polygon], d, tolerance)) expectAt(ring, polygon, d, tolerance);
      }),
    );
  });
});

describe('inward', () => {
  it('lies at its distance everywhere and inside', () => {
    fc.assert(
      fc.property(blob, away, (polygon, d) => {
        for (const ring of offset([polygon], -d)) {
          expectAt(ring, polygon, d, ARC_TOLERANCE_MM);
          expect(regionContains([polygon], ring[0], ring[1])).toBe(true);
        }
      }),
    );
  });

  it('keeps every point that is further in than the distance, and no other', () => {
    const spot = fc.double({ min: -150, max: 150, noNaN: true });
    fc.assert(
      fc.property(blob, away, fc.array(fc.tuple(spot, spot), { minLength: 20, maxLength: 20 }), (polygon, d, spots) => {
        const shrunk = offset([polygon], -d);
        for (const [x, y] of spots) {
          const edge = distanceToEdge(polygon, x, y);
          if (Math.abs(edge - d) < ARC_TOLERANCE_MM + GRID_MM || edge < 1e-6) continue;
          expect(regionContains(shrunk, x, y)).toBe(regionContains([polygon], x, y) && edge > d);
        }
      }),
    );
  });

  it('leaves nothing of what is narrower than twice the distance, and two parts of a dumb-bell', () => {
    const square = Float64Array.of(0, 0, 20, 0, 20, 20, 0, 20);
    expect(offset([square], -10.001)).toEqual([]);
    expect(regionArea(offset([square], -9))).toBeCloseTo(4, 6);
    const bell = Float64Array.of(
      0,
      0,
      30,
      0,
      30,
      12,
      60,
      12,
      60,
      0,
      90,
      0,
      90,
      30,
      60,
      30,
      60,
      18,
      30,
      18,
      30,
      30,
      0,
      30,
    );
    expect(offset([bell], -4).length).toBe(2);
  });

  it('out then in gives a convex polygon back', () => {
    fc.assert(
      fc.property(convex, away, (polygon, d) => {
        const back = offset(offset([polygon], d), -d);
        const lost = regionArea(difference([polygon], back)) + regionArea(difference(back, [polygon]));
        expect(lost).toBeLessThan((ARC_TOLERANCE_MM + GRID_MM) * perimeter(polygon));
      }),
    );
  });
});

/** Corners and mid-points of a ring against the distance by brute force. */
function expectAt(ring: Polygon, polygon: Polygon, d: number, tolerance: number) {
  for (let i = 0; i < ring.length; i += 2) {
    const j = (i + 2) % ring.length;
    const [x0, y0, x1, y1] = [ring[i], ring[i + 1], ring[j], ring[j + 1]];
    for (const [x, y] of [
      [x0, y0],
      [(x0 + x1) / 2, (y0 + y1) / 2],
    ] as const) {
      const edge = distanceToEdge(polygon, x, y);
      expect(edge).toBeGreaterThan(d - tolerance - GRID_MM);
      expect(edge).toBeLessThan(d + GRID_MM);
    }
  }
}

function shifted(polygon: Polygon): Polygon {
  return polygon.map((value, i) => value + (i % 2 === 0 ? 31 : -17));
}

describe('booleans', () => {
  it('union and intersection together have the area of both; the difference is what is not shared', () => {
    fc.assert(
      fc.property(blob, blob, (a, other) => {
        const b = shifted(other);
        const both = signedArea(a) + signedArea(b);
        // What rounding every edge to the grid can move.
        const grid = 1e-6 * (perimeter(a) + perimeter(b));
        const shared = regionArea(intersection([a], [b]));
        expect(Math.abs(regionArea(union([a], [b])) + shared - both)).toBeLessThan(grid);
        expect(Math.abs(regionArea(difference([a], [b])) - (signedArea(a) - shared))).toBeLessThan(grid);
      }),
    );
  });

  it('agree with an independent library', () => {
    fc.assert(
      fc.property(blob, blob, (a, other) => {
        const b = shifted(other);
        const theirs = Flatten.BooleanOperations.intersect(asFace(a), asFace(b)).area();
        expect(Math.abs(regionArea(intersection([a], [b])) - theirs)).toBeLessThan(1e-5 * signedArea(a));
      }),
      { numRuns: 40 },
    );
  });

  it('a hole comes back clockwise', () => {
    const rings = difference([Float64Array.of(0, 0, 9, 0, 9, 9, 0, 9)], [Float64Array.of(3, 3, 6, 3, 6, 6, 3, 6)]);
    expect(rings.map((ring) => Math.sign(signedArea(ring))).toSorted((a, b) => a - b)).toEqual([-1, 1]);
    expect(regionArea(rings)).toBe(72);
  });
});

function asFace(polygon: Polygon): Flatten.Polygon {
  const points: [number, number][] = [];
  for (let i = 0; i < polygon.length; i += 2) points.push([polygon[i], polygon[i + 1]]);
  return new Flatten.Polygon([points]);
}
