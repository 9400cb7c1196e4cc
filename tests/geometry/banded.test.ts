import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { banded } from '../../src/geometry/banded.ts';
import { distanceToEdge, regionContains } from '../../src/geometry/nearness.ts';
import { reversed } from '../../src/geometry/polygon.ts';
import { blob } from './polygons.ts';

/** On the corners of the region and beside them too: there a point lies on the border of a band. */
const place = fc.oneof(
  fc.double({ min: -160, max: 160, noNaN: true }),
  fc.integer({ min: -160, max: 160 }),
  fc.constantFrom(0, 0.5, 1e-9, -1e-9),
);

describe('a region in bands', () => {
  test('holds the points it holds when every edge is asked', () => {
    fc.assert(
      fc.property(blob, fc.array(fc.tuple(place, place), { minLength: 20, maxLength: 60 }), (ring, places) => {
        const region = [ring, reversed(ring.map((mm) => mm / 3))];
        const { contains } = banded(region);
        const corners = [...ring].flatMap((y, i) => (i % 2 === 1 ? [[ring[i - 1]!, y] as const, [0, y] as const] : []));
        for (const [x, y] of [...places, ...corners]) expect(contains(x, y)).toBe(regionContains(region, x, y));
      }),
    );
  });

  test('comes as near to a point as its nearest edge', () => {
    const reach = fc.double({ min: 0.01, max: 80, noNaN: true });
    fc.assert(
      fc.property(blob, place, place, reach, (ring, x, y, mm) => {
        const away = distanceToEdge(ring, x, y);
        fc.pre(Math.abs(away - mm) > 1e-9);
        expect(banded([ring]).edgeIsNearer(x, y, mm)).toBe(away < mm);
      }),
    );
  });

  test('of nothing, holds nothing and comes near to nothing', () => {
    expect(banded([]).contains(0, 0)).toBe(false);
    expect(banded([]).edgeIsNearer(0, 0, 1000)).toBe(false);
  });
});
