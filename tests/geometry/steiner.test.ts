import { describe, expect, it } from 'vitest';
import { evenOffset } from '../../src/geometry/even-offset.ts';
import { perimeter, regionArea } from '../../src/geometry/measure.ts';
import { offset } from '../../src/geometry/offset.ts';
import { shapePolygon, type Shape } from '../../src/geometry/shape.ts';

/**
 * Steiner's formula for a convex body and a disc: A(d) = A + P d + π d², P(d) = P + 2π d. Area and perimeter of the
 * shapes themselves by school geometry.
 */
const CONVEX: readonly {
  readonly name: string;
  readonly shape: Shape;
  readonly area: number;
  readonly round: number;
}[] = [
  { name: 'rectangle', shape: { kind: 'rectangle', lengthMm: 90, widthMm: 40 }, area: 3600, round: 260 },
  { name: 'circle', shape: { kind: 'circle', radiusMm: 25 }, area: Math.PI * 625, round: Math.PI * 50 },
  {
    name: 'triangle',
    // 3, 4, 5 times 20.
    shape: { kind: 'polygon', points: [corner(0, 0), corner(80, 0), corner(0, 60)] },
    area: 2400,
    round: 240,
  },
  {
    name: 'rounded rectangle',
    shape: { kind: 'rectangle', lengthMm: 90, widthMm: 40, cornerMm: 8 },
    area: 3600 - (4 - Math.PI) * 64,
    round: 260 - (8 - 2 * Math.PI) * 8,
  },
  {
    name: 'slot',
    shape: { kind: 'slot', lengthMm: 50, widthMm: 12 },
    area: 38 * 12 + Math.PI * 36,
    round: 2 * 38 + Math.PI * 12,
  },
];

function corner(xMm: number, yMm: number) {
  return { xMm, yMm };
}

describe.each([
  { by: 'offset', grow: offset },
  { by: 'evenOffset', grow: evenOffset },
])('$by outwards keeps Steiner’s formula', ({ grow }) => {
  it.each(CONVEX)('of a $name to 0.01 %', ({ shape, area, round }) => {
    const made = shapePolygon(shape, { xMm: 31.7, yMm: -8.3, angleDeg: 23 }, 1e-5);
    if (!made.ok) throw new Error(made.what);
    for (const d of [0.2, 1, 3.175, 12.7, 50]) {
      const grown = grow([made.polygon], d);
      expect(grown.length).toBe(1);
      expect(Math.abs(regionArea(grown) / (area + round * d + Math.PI * d * d) - 1)).toBeLessThan(1e-4);
      expect(Math.abs(perimeter(grown[0]) / (round + 2 * Math.PI * d) - 1)).toBeLessThan(1e-4);
    }
  });
});
