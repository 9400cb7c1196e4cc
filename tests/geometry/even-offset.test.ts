import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evenOffset } from '../../src/geometry/even-offset.ts';
import { perimeter, regionArea, signedArea } from '../../src/geometry/measure.ts';
import { distanceToEdge, regionContains } from '../../src/geometry/nearness.ts';
import { ARC_TOLERANCE_MM, difference, offset } from '../../src/geometry/offset.ts';
import type { Polygon, Region } from '../../src/geometry/polygon.ts';
import { mirror } from '../../src/geometry/transform.ts';
import { blob } from './polygons.ts';

const away = fc.double({ min: 0.5, max: 40, noNaN: true });
const eitherWay = fc.tuple(away, fc.boolean()).map(([d, out]) => (out ? d : -d));
const GRID_MM = 3e-6;

describe('even offset', () => {
  it('is the library’s own but for its arcs', () => {
    fc.assert(
      fc.property(blob, eitherWay, (polygon, d) => {
        const [ours, theirs] = [evenOffset([polygon], d), offset([polygon], d)];
        const round = [...ours, ...theirs].reduce((sum, ring) => sum + perimeter(ring), 0);
        const apart = regionArea(difference(ours, theirs)) + regionArea(difference(theirs, ours));
        expect(apart).toBeLessThanOrEqual((ARC_TOLERANCE_MM + GRID_MM) * round);
      }),
    );
  });

  it('lies at its distance everywhere, joins inside by no more than the arc tolerance', () => {
    fc.assert(
      fc.property(blob, eitherWay, fc.constantFrom(0.001, 0.01, 0.1), (polygon, d, tolerance) => {
        for (const ring of evenOffset([polygon], d, tolerance)) {
          for (const [x, y] of cornersAndMiddles(ring)) {
            const edge = distanceToEdge(polygon, x, y);
            expect(edge).toBeGreaterThan(Math.abs(d) - tolerance - GRID_MM);
            expect(edge).toBeLessThan(Math.abs(d) + GRID_MM);
            expect(regionContains([polygon], x, y)).toBe(d < 0);
          }
        }
      }),
    );
  });

  it('of a mirrored polygon is the mirrored offset', () => {
    fc.assert(
      fc.property(blob, eitherWay, (polygon, d) => {
        const [straight, turned] = [evenOffset([polygon], d), evenOffset([mirror(polygon)], d).map(mirror)];
        expect(cornersOff(straight, turned)).toBeLessThan(GRID_MM);
        expect(cornersOff(turned, straight)).toBeLessThan(GRID_MM);
      }),
    );
  });

  it('shrinks a hole when it grows, and closes one narrower than twice the distance', () => {
    const frame = [Float64Array.of(0, 0, 60, 0, 60, 60, 0, 60), Float64Array.of(20, 20, 20, 40, 40, 40, 40, 20)];
    const grown = evenOffset(frame, 4);
    expect(grown.map((ring) => Math.sign(signedArea(ring))).toSorted((a, b) => a - b)).toEqual([-1, 1]);
    // A + P d + π d² outside, and 20 less 2 · 4 each way inside.
    expect(regionArea(grown)).toBeCloseTo(3600 + 240 * 4 + Math.PI * 16 - 144, 1);
    expect(evenOffset(frame, 10.001).length).toBe(1);
    // Inwards the hole grows, with round corners.
    expect(regionArea(evenOffset(frame, -4))).toBeCloseTo(52 * 52 - (400 + 80 * 4 + Math.PI * 16), 1);
  });

  it('takes points that repeat', () => {
    const square = Float64Array.of(0, 0, 0, 0, 10, 0, 10, 10, 10, 10, 0, 10, 0, 0);
    expect(regionArea(evenOffset([square], -2))).toBeCloseTo(36, 9);
    expect(evenOffset([], 3)).toEqual([]);
    expect(() => evenOffset([square], NaN)).toThrow(RangeError);
  });

  it('by nothing is the region itself', () => {
    const square = Float64Array.of(0, 0, 10, 0, 10, 10, 0, 10);
    expect(regionArea(evenOffset([square], 0))).toBe(100);
  });
});

function cornersAndMiddles(ring: Polygon): (readonly [number, number])[] {
  const points: (readonly [number, number])[] = [];
  for (let i = 0; i < ring.length; i += 2) {
    const j = (i + 2) % ring.length;
    points.push([ring[i], ring[i + 1]], [(ring[i] + ring[j]) / 2, (ring[i + 1] + ring[j + 1]) / 2]);
  }
  return points;
}

/** How far a corner of the one is from the other at most. */
function cornersOff(from: Region, to: Region): number {
  if (from.length > 0 && to.length === 0) return Infinity;
  return Math.max(
    0,
    ...from.flatMap((ring) =>
      cornersAndMiddles(ring).map(([x, y]) => Math.min(...to.map((t) => distanceToEdge(t, x, y)))),
    ),
  );
}
