import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bounds, perimeter, signedArea } from '../../src/geometry/measure.ts';
import { shapePolygon, type Shape } from '../../src/geometry/shape.ts';
import type { Placement } from '../../src/geometry/transform.ts';

const CHORD_MM = 0.001;

function made(shape: Shape, at?: Placement) {
  const result = shapePolygon(shape, at, CHORD_MM);
  if (!result.ok) throw new Error(result.what);
  return result.polygon;
}

/** Inscribed: area short by at most 2/3 · chord · perimeter, perimeter by a smaller share still. */
function expectSize(shape: Shape, area: number, length: number) {
  const polygon = made(shape);
  expect(area - signedArea(polygon)).toBeGreaterThanOrEqual(-1e-9 * area);
  expect(area - signedArea(polygon)).toBeLessThanOrEqual((2 / 3) * CHORD_MM * length + 1e-9);
  expect(perimeter(polygon)).toBeLessThanOrEqual(length * (1 + 1e-12));
  expect(perimeter(polygon)).toBeGreaterThan(length * (1 - 1e-3));
}

describe('sizes in closed form', () => {
  const size = fc.double({ min: 1, max: 300, noNaN: true });
  it('circle', () => {
    fc.assert(
      fc.property(size, (r) => {
        expectSize({ kind: 'circle', radiusMm: r }, Math.PI * r * r, 2 * Math.PI * r);
      }),
    );
    expect(made({ kind: 'circle', diameterMm: 18 })).toEqual(made({ kind: 'circle', radiusMm: 9 }));
  });

  it('slot', () => {
    fc.assert(
      fc.property(size, size, (widthMm, straight) => {
        const shape: Shape = { kind: 'slot', lengthMm: widthMm + straight, widthMm };
        const area = (Math.PI * widthMm ** 2) / 4 + straight * widthMm;
        expectSize(shape, area, Math.PI * widthMm + 2 * straight);
      }),
    );
  });

  it('rounded rectangle', () => {
    fc.assert(
      fc.property(size, size, fc.double({ min: 0, max: 1, noNaN: true }), (lengthMm, widthMm, share) => {
        const c = (share * Math.min(lengthMm, widthMm)) / 2;
        const area = lengthMm * widthMm - (4 - Math.PI) * c * c;
        expectSize(
          { kind: 'rectangle', lengthMm, widthMm, cornerMm: c },
          area,
          2 * (lengthMm + widthMm) - (8 - 2 * Math.PI) * c,
        );
      }),
    );
  });

  it('length runs along y, width along x', () => {
    expect(bounds(made({ kind: 'rectangle', lengthMm: 76, widthMm: 56 }))).toEqual({
      minX: -28,
      maxX: 28,
      minY: -38,
      maxY: 38,
    });
    expect(bounds(made({ kind: 'slot', lengthMm: 20, widthMm: 6 }))?.maxY).toBeCloseTo(10, 9);
  });

  it('an L with five outside corners and one inside corner rounded', () => {
    const c = 4;
    const points = [[0, 0], [60, 0], [60, 20], [20, 20], [20, 50], [0, 50]].map(([xMm, yMm]) => ({ xMm: xMm, yMm: yMm, cornerMm: c })); // prettier-ignore
    // Each outside corner loses (1 − π/4)c², the inside corner gains as much.
    const polygon = made({ kind: 'polygon', points });
    expect(signedArea(polygon)).toBeCloseTo(1800 - 4 * (1 - Math.PI / 4) * c * c, 1);
    const clockwise = made({ kind: 'polygon', points: points.toReversed() });
    expect(signedArea(clockwise)).toBeCloseTo(signedArea(polygon), 9);
  });

  it('corner radii of an equilateral triangle', () => {
    const r = 5;
    const points = [0, 120, 240].map((deg) => {
      const a = (deg * Math.PI) / 180;
      return { xMm: 40 * Math.cos(a), yMm: 40 * Math.sin(a), cornerMm: r };
    });
    const side = 40 * Math.sqrt(3);
    // Rounding a convex shape inwards by r and out again: A − r²(3√3 − π).
    const area = (side * side * Math.sqrt(3)) / 4 - r * r * (3 * Math.sqrt(3) - Math.PI);
    expect(area - signedArea(made({ kind: 'polygon', points }))).toBeLessThan((2 / 3) * CHORD_MM * 2 * Math.PI * r);
    expect(area - signedArea(made({ kind: 'polygon', points }))).toBeGreaterThan(0);
  });
});

describe('placement', () => {
  it('turns about the shape’s own centre, then moves', () => {
    const polygon = made({ kind: 'rectangle', lengthMm: 30, widthMm: 10 }, { xMm: 100, yMm: -50, angleDeg: 90 });
    expect(bounds(polygon)).toEqual({ minX: 85, maxX: 115, minY: -55, maxY: -45 });
  });

  it('gives counter-clockwise polygons, however a path runs', () => {
    const there = made({ kind: 'path', d: 'M0 0L0 10L10 10L10 0Z' });
    expect(signedArea(there)).toBe(100);
  });
});

describe('shapes that cannot be made', () => {
  const wrong: readonly Shape[] = [
    { kind: 'circle', radiusMm: 0 },
    { kind: 'circle', diameterMm: Number.NaN },
    { kind: 'slot', lengthMm: 5, widthMm: 6 },
    { kind: 'slot', lengthMm: 5, widthMm: -6 },
    { kind: 'rectangle', lengthMm: 20, widthMm: 10, cornerMm: 5.01 },
    { kind: 'rectangle', lengthMm: 20, widthMm: 10, cornerMm: -1 },
    { kind: 'polygon', points: [{ xMm: 0, yMm: 0 }, { xMm: 1, yMm: 0 }] }, // prettier-ignore
    { kind: 'polygon', points: [{ xMm: 0, yMm: 0 }, { xMm: 10, yMm: 0 }, { xMm: 20, yMm: 0 }] }, // prettier-ignore
    { kind: 'path', d: 'M0 0L5 5Z' },
    { kind: 'path', d: 'M0 0L5 0L5 5ZM10 10L15 10L15 15Z' },
  ];
  it.each(wrong.map((shape) => [JSON.stringify(shape), shape] as const))('%s', (_, shape) => {
    const result = shapePolygon(shape);
    expect(result).toMatchObject({ ok: false });
    if (!result.ok) expect(result.what).not.toMatch(/\d/);
  });

  it('a path at fault says where', () => {
    expect(shapePolygon({ kind: 'path', d: 'M0 0L5 x' })).toMatchObject({ ok: false, at: 7 });
  });
});
