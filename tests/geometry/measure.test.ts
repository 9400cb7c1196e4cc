import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { selfCrossing } from '../../src/geometry/crossing.ts';
import {
  bounds,
  centroid,
  longestExtent,
  orientation,
  perimeter,
  regionArea,
  regionCentroid,
  signedArea,
} from '../../src/geometry/measure.ts';
import { contains, distanceToEdge, furthestPoint, nearestOnEdge, regionContains } from '../../src/geometry/nearness.ts';
import { reversed } from '../../src/geometry/polygon.ts';
import { mirror, rotate, translate } from '../../src/geometry/transform.ts';
import { blob } from './polygons.ts';

const triangle = Float64Array.of(0, 0, 30, 0, 0, 40);

describe('sizes', () => {
  it('of a square of 10 with a hole of 2 at one side: its middle moves away from the hole', () => {
    const square = Float64Array.of(0, 0, 10, 0, 10, 10, 0, 10);
    const hole = reversed(Float64Array.of(7, 4, 9, 4, 9, 6, 7, 6));
    expect(regionCentroid([square])).toEqual({ x: 5, y: 5 });
    const middle = regionCentroid([square, hole])!;
    expect(middle.x).toBeCloseTo((100 * 5 - 4 * 8) / 96, 12);
    expect(middle.y).toBeCloseTo(5, 12);
    expect(regionCentroid([mirror(square), mirror(hole)])!.x).toBeCloseTo(-middle.x, 12);
    expect(regionCentroid([])).toBeUndefined();
  });

  it('of a 3-4-5 triangle', () => {
    expect(signedArea(triangle)).toBe(600);
    expect(perimeter(triangle)).toBe(120);
    expect(centroid(triangle)).toEqual({ x: 10, y: 40 / 3 });
    expect(bounds(triangle)).toEqual({ minX: 0, minY: 0, maxX: 30, maxY: 40 });
    expect(longestExtent(triangle)).toEqual({ from: { x: 30, y: 0 }, to: { x: 0, y: 40 }, lengthMm: 50 });
    expect(orientation(triangle)).toBe('counter-clockwise');
    expect(orientation(reversed(triangle))).toBe('clockwise');
    expect(orientation(Float64Array.of(0, 0, 1, 1, 2, 2))).toBe('flat');
    expect(regionArea([triangle, reversed(Float64Array.of(5, 5, 10, 5, 10, 10, 5, 10))])).toBe(575);
  });

  it('of nothing', () => {
    const nothing = new Float64Array(0);
    expect(signedArea(nothing)).toBe(0);
    expect(bounds(nothing)).toBeUndefined();
    expect(centroid(nothing)).toBeUndefined();
    expect(longestExtent(nothing)).toBeUndefined();
    expect(() => nearestOnEdge(nothing, 0, 0)).toThrow(RangeError);
  });
});

describe('a point against a polygon', () => {
  it('distances and sides of a triangle', () => {
    expect(contains(triangle, 5, 5)).toBe(true);
    expect(contains(triangle, 25, 25)).toBe(false);
    expect(contains(triangle, -1, 0)).toBe(false);
    expect(distanceToEdge(triangle, 5, 5)).toBe(5);
    // The hypotenuse 4x + 3y = 120.
    expect(distanceToEdge(triangle, 30, 40)).toBeCloseTo(24, 12);
    expect(distanceToEdge(triangle, -3, -4)).toBe(5);
    expect(furthestPoint(triangle, 29, 0)).toMatchObject({ point: { x: 0, y: 40 } });
    const hole = reversed(Float64Array.of(2, 2, 8, 2, 8, 8, 2, 8));
    expect(regionContains([triangle, hole], 5, 5)).toBe(false);
    expect(regionContains([triangle, hole], 1, 1)).toBe(true);
  });

  it('inside and outside agree with the winding angle', () => {
    const spot = fc.double({ min: -200, max: 200, noNaN: true });
    fc.assert(
      fc.property(blob, spot, spot, (polygon, x, y) => {
        fc.pre(distanceToEdge(polygon, x, y) > 1e-6);
        expect(contains(polygon, x, y)).toBe(Math.abs(winding(polygon, x, y)) > 0.5);
      }),
    );
  });
});

function winding(polygon: Float64Array, x: number, y: number): number {
  let turns = 0;
  for (let i = 0; i < polygon.length; i += 2) {
    const j = (i + 2) % polygon.length;
    const [ax, ay] = [polygon[i] - x, polygon[i + 1] - y];
    const [bx, by] = [polygon[j] - x, polygon[j + 1] - y];
    turns += Math.atan2(ax * by - ay * bx, ax * bx + ay * by) / (2 * Math.PI);
  }
  return turns;
}

function expectClose(a: Float64Array, b: Float64Array, mm: number) {
  expect(a.length).toBe(b.length);
  for (let i = 0; i < a.length; i++) expect(Math.abs(a[i] - b[i])).toBeLessThanOrEqual(mm);
}

describe('moves', () => {
  it('mirror keeps size, way round and every point, exactly', () => {
    fc.assert(
      fc.property(blob, (polygon) => {
        const other = mirror(polygon);
        expect(Math.abs(signedArea(other) - signedArea(polygon))).toBeLessThan(1e-9);
        expect(Math.abs(perimeter(other) - perimeter(polygon))).toBeLessThan(1e-9);
        expect(mirror(other)).toEqual(polygon);
        const { x, y } = centroid(polygon)!;
        expect(centroid(other)!.x).toBeCloseTo(-x, 9);
        expect(centroid(other)!.y).toBeCloseTo(y, 9);
      }),
    );
  });

  it('a translation by whole millimetres changes no size', () => {
    const whole = fc.integer({ min: -500, max: 500 });
    fc.assert(
      fc.property(blob, whole, whole, (polygon, dx, dy) => {
        const moved = translate(polygon, dx, dy);
        expect(Math.abs(signedArea(moved) - signedArea(polygon)) / signedArea(polygon)).toBeLessThan(1e-9);
        expect(Math.abs(perimeter(moved) - perimeter(polygon))).toBeLessThan(1e-9);
        expectClose(translate(moved, -dx, -dy), polygon, 1e-9);
        expect(distanceToEdge(moved, dx, dy)).toBeCloseTo(distanceToEdge(polygon, 0, 0), 9);
      }),
    );
  });

  it('turning there and back, and four quarters, comes home', () => {
    fc.assert(
      fc.property(blob, fc.double({ min: -360, max: 360, noNaN: true }), (polygon, angle) => {
        expectClose(rotate(rotate(polygon, angle, { x: 7, y: -3 }), -angle, { x: 7, y: -3 }), polygon, 1e-9);
      }),
    );
    expect(rotate(rotate(rotate(rotate(triangle, 90), 90), 90), 90)).toEqual(triangle);
    expect(Array.from(rotate(Float64Array.of(1, 0, 0, 2, -3, 0), 90))).toEqual([0, 1, -2, 0, 0, -3]);
  });
});

describe('self-crossing', () => {
  it('finds the crossing of a bow tie', () => {
    expect(selfCrossing(Float64Array.of(0, 0, 10, 10, 10, 0, 0, 10))).toEqual({ x: 5, y: 5 });
  });

  it('finds a touch, a spike and an edge run twice', () => {
    expect(selfCrossing(Float64Array.of(0, 0, 10, 0, 10, 10, 5, 0, 0, 10))).toEqual({ x: 5, y: 0 });
    expect(selfCrossing(Float64Array.of(0, 0, 10, 0, 5, 0, 5, 10))).toBeDefined();
    expect(selfCrossing(Float64Array.of(0, 0, 10, 0, 10, 10, 10, 0, 0, -10))).toBeDefined();
  });

  it('lets simple outlines pass and agrees with every pair tried', () => {
    fc.assert(
      fc.property(blob, (polygon) => {
        expect(selfCrossing(polygon)).toBeUndefined();
      }),
    );
    const micron = fc.integer({ min: -50_000, max: 50_000 }).map((n) => n / 1000);
    const scrawl = fc.array(micron, { minLength: 8, maxLength: 16 });
    fc.assert(
      fc.property(scrawl, (numbers) => {
        const polygon = Float64Array.from(numbers.slice(0, numbers.length & ~1));
        const found = selfCrossing(polygon);
        if (anyProperCrossing(polygon)) expect(found).toBeDefined();
        if (found !== undefined) expect(distanceToEdge(polygon, found.x, found.y)).toBeLessThan(1e-6);
      }),
    );
  });
});

/** Every pair of edges that aren't neighbours, by solving for both parameters. */
function anyProperCrossing(p: Float64Array): boolean {
  const count = p.length / 2;
  for (let i = 0; i < count; i++) {
    for (let j = i + 2; j < count; j++) {
      if (i === 0 && j === count - 1) continue;
      const [i1, j1] = [(i + 1) % count, (j + 1) % count];
      const [ax, ay] = [p[2 * i1] - p[2 * i], p[2 * i1 + 1] - p[2 * i + 1]];
      const [bx, by] = [p[2 * j1] - p[2 * j], p[2 * j1 + 1] - p[2 * j + 1]];
      const [cx, cy] = [p[2 * j] - p[2 * i], p[2 * j + 1] - p[2 * i + 1]];
      const det = ax * by - ay * bx;
      const [t, u] = [(cx * by - cy * bx) / det, (cx * ay - cy * ax) / det];
      if (t > 1e-6 && t < 1 - 1e-6 && u > 1e-6 && u < 1 - 1e-6) return true;
    }
  }
  return false;
}
