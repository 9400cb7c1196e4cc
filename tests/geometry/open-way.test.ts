import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { convexHull, leaves } from '../../src/geometry/hull.ts';
import { perimeter, signedArea } from '../../src/geometry/measure.ts';
import { contains, distanceToEdge } from '../../src/geometry/nearness.ts';
import { openWay } from '../../src/geometry/open-way.ts';
import type { Polygon } from '../../src/geometry/polygon.ts';
import { blob, convex } from './polygons.ts';

describe('the open way', () => {
  it('from a corner of a square is the middle of the outside', () => {
    const way = openWay(Float64Array.of(0, 0, 10, 0, 10, 10, 0, 10));
    expect(way?.x).toBeCloseTo(-Math.SQRT1_2, 12);
    expect(way?.y).toBeCloseTo(-Math.SQRT1_2, 12);
  });

  it('from the bottom of a slot is between its jaws', () => {
    // Seen from (0, 0): jaws at (−2, 10) and (4, 10).
    const way = openWay(Float64Array.of(0, 0, -2, 0, -2, 10, -20, 10, -20, -10, 20, -10, 20, 10, 4, 10, 4, 0));
    expect(Math.atan2(way!.y, way!.x)).toBeCloseTo((Math.atan2(10, -2) + Math.atan2(10, 4)) / 2, 12);
  });

  it('is none where a hook bends over the point', () => {
    const hook = Float64Array.of(0, 0, -2, 0, -2, 10, 30, 10, 30, 14, -20, 14, -20, -10, 20, -10, 20, 5, 4, 5, 4, 0);
    expect(openWay(hook)).toBeUndefined();
  });

  it('meets the polygon nowhere', () => {
    fc.assert(
      fc.property(blob, fc.nat(), (polygon, at) => {
        const start = 2 * (at % (polygon.length / 2));
        const round = Float64Array.from([...polygon.slice(start), ...polygon.slice(0, start)]);
        const way = openWay(round);
        // All of such a polygon's edge is in sight of the origin, so that the way straight outwards is open.
        if (way === undefined) throw new Error('the way outwards is open');
        for (let t = 0.5; t < 400; t += 0.5) {
          expect(contains(polygon, round[0] + t * way.x, round[1] + t * way.y)).toBe(false);
        }
      }),
    );
  });
});

describe('the hull', () => {
  it('is convex, holds the polygon and uses only its corners', () => {
    fc.assert(
      fc.property(blob, (polygon) => {
        const hull = convexHull(polygon);
        for (const turn of turns(hull)) expect(turn).toBeGreaterThan(0);
        for (let i = 0; i < polygon.length; i += 2) {
          const [x, y] = [polygon[i], polygon[i + 1]];
          expect(contains(hull, x, y) || distanceToEdge(hull, x, y) < 1e-9).toBe(true);
        }
        for (let i = 0; i < hull.length; i += 2) expect(distanceToEdge(polygon, hull[i], hull[i + 1])).toBe(0);
        expect(perimeter(hull)).toBeLessThan(perimeter(polygon) + 1e-9);
      }),
    );
  });

  it('of a convex polygon is that polygon', () => {
    fc.assert(
      fc.property(convex, (polygon) => {
        expect(signedArea(convexHull(polygon))).toBeCloseTo(signedArea(polygon), 6);
      }),
    );
  });

  it('is left by a ray where it crosses an edge', () => {
    const square = Float64Array.of(0, 0, 10, 0, 10, 10, 0, 10);
    expect(leaves(square, { x: 4, y: 4 }, { x: 0, y: -1 })).toEqual({ x: 4, y: 0 });
    expect(leaves(square, { x: 4, y: 4 }, { x: 0.8, y: 0.6 })).toEqual({ x: 10, y: 8.5 });
  });
});

function turns(ring: Polygon): number[] {
  const count = ring.length / 2;
  return Array.from({ length: count }, (_, i) => {
    const [a, b, c] = [2 * i, 2 * ((i + 1) % count), 2 * ((i + 2) % count)];
    return (ring[b] - ring[a]) * (ring[c + 1] - ring[a + 1]) - (ring[c] - ring[a]) * (ring[b + 1] - ring[a + 1]);
  });
}
