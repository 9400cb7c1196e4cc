import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cornerRestGap } from '../../src/geometry/corner.ts';
import { evenOffset } from '../../src/geometry/even-offset.ts';
import { perimeter, regionArea, signedArea } from '../../src/geometry/measure.ts';
import { contains, distanceToEdge } from '../../src/geometry/nearness.ts';
import { ARC_TOLERANCE_MM, difference, offset } from '../../src/geometry/offset.ts';
import type { Polygon } from '../../src/geometry/polygon.ts';
import { sawLine, type SawLine } from '../../src/geometry/saw-line.ts';
import { shapePolygon, type Shape } from '../../src/geometry/shape.ts';
import { mirror, place } from '../../src/geometry/transform.ts';
import { blob, convex } from './polygons.ts';

/** Stated in saw-line.ts: never nearer but for the grid, further by up to this. */
const OUTSIDE_MM = 0.003;
const GRID_MM = 5e-6;
/** About 5/8 in, which the trade's tables give as the least radius of a blade of 1/4 in; here only a size. */
const BLADE_MM = 15.9;

describe('a convex outline', () => {
  it('has the plain offset for its line, and no relief cut', () => {
    fc.assert(
      fc.property(convex, fc.double({ min: 0, max: 20, noNaN: true }), (outline, d) => {
        const { line, ...cuts } = sawLine(outline, d, BLADE_MM);
        const plain = onlyRing(offset([outline], d));
        expect(Math.max(apart(line, plain), apart(plain, line))).toBeLessThan(OUTSIDE_MM);
        expect(cuts).toEqual({ reliefs: [], blindBays: [] });
      }),
    );
  });
});

/** A square of 200 with a notch from the right, its walls at an angle to each other, its end round; apex at x 40. */
function notched(angleDeg: number, roundMm: number): Polygon {
  const half = 60 * Math.tan((angleDeg * Math.PI) / 360);
  return polygonOf({
    kind: 'polygon',
    points: [
      at(-100, -100),
      at(100, -100),
      at(100, -half),
      { xMm: 40, yMm: 0, cornerMm: roundMm },
      at(100, half),
      at(100, 100),
      at(-100, 100),
    ],
  });
}

describe('a bay rounded by 10 between straight sides', () => {
  it.each([60, 80, 110])('is filled by the blade’s radius, %i degrees', (angleDeg) => {
    const d = 4;
    const outline = notched(angleDeg, 10);
    const { line, reliefs, blindBays } = sawLine(outline, d, BLADE_MM);
    // An offset outwards makes an inside bend tighter by the distance; the rest of a corner is that of corner.ts.
    const left = cornerRestGap(BLADE_MM, 10 - d, angleDeg);
    expect(blindBays).toEqual([]);
    expect(reliefs.length).toBe(1);
    expect(Math.abs(reliefs[0].leftMm - left)).toBeLessThan(0.01 + OUTSIDE_MM);
    // The middle of the bay, d outside the arc's middle.
    const middle = 40 + 10 / Math.sin((angleDeg * Math.PI) / 360) - 10 + d;
    expect(reliefs[0].to.x).toBeCloseTo(middle, 1);
    expect(reliefs[0].to.y).toBeCloseTo(0, 6);
    expect(reliefs[0].from.x).toBeCloseTo(100 + d, 2);
    expect(reliefs[0].from.y).toBeCloseTo(0, 6);
    expect(tightestBend(line)).toBeGreaterThan(BLADE_MM * 0.998);
    expect(tightestBend(line)).toBeLessThan(BLADE_MM * 1.002);
  });

  it('with parallel sides is passed by at its mouth', () => {
    const d = 4;
    // 20 wide, 60 deep, a half circle for its end.
    const end = [
      { xMm: 10, yMm: 40, cornerMm: 9.999 },
      { xMm: -10, yMm: 40, cornerMm: 9.999 },
    ];
    const outline = polygonOf({
      kind: 'polygon',
      points: [at(-100, -100), at(100, -100), at(100, 100), at(10, 100), ...end, at(-10, 100), at(-100, 100)],
    });
    const { line, reliefs } = sawLine(outline, d, BLADE_MM);
    // The blade's circle touches the circles of radius d about both corners of the mouth.
    const lowest = 100 + Math.sqrt((BLADE_MM + d) ** 2 - 100) - BLADE_MM;
    expect(reliefs.length).toBe(1);
    expect(Math.abs(reliefs[0].leftMm - (lowest - 44))).toBeLessThan(0.01 + OUTSIDE_MM);
    expect(reliefs[0].to.x).toBeCloseTo(0, 3);
    expect(Math.abs(reliefs[0].to.y - 44)).toBeLessThan(0.01 + OUTSIDE_MM);
    expect(reliefs[0].from.y).toBeCloseTo(104, 2);
    expect(tightestBend(line)).toBeGreaterThan(BLADE_MM * 0.998);
  });

  it('is followed by a blade that bends as tightly, and wider bays by any such', () => {
    const { line, reliefs } = sawLine(notched(80, 10), 4, 5.9);
    expect(reliefs).toEqual([]);
    const plain = onlyRing(offset([notched(80, 10)], 4));
    // The polygon of the bay has corners where the curve has none, each filled by a hair.
    expect(apart(line, plain)).toBeLessThan(0.02);
    expect(sawLine(notched(80, 30), 4, BLADE_MM).reliefs).toEqual([]);
  });

  it('needs a cut from 0.2 mm left on', () => {
    // (R − r)(1/sin 40° − 1) = 0.2 at R = r + 0.36.
    const radiusFor = (left: number) => 6 + left / cornerRestGap(1, 0, 80);
    expect(sawLine(notched(80, 10), 4, radiusFor(0.17)).reliefs).toEqual([]);
    expect(sawLine(notched(80, 10), 4, radiusFor(0.23)).reliefs.length).toBe(1);
  });
});

describe('relief cuts', () => {
  it('run counter-clockwise from the neck', () => {
    // Notches at the upper right, right, lower left and upper left.
    const outline = ring(
      '-100 -100, -60 -100, -50 -60, -40 -100, 100 -100, 100 -20, 60 0, 100 20, 100 100, 60 100, 40 50, 20 100, -20 100, -35 50, -60 100, -100 100',
    );
    const { reliefs } = sawLine(outline, 3, BLADE_MM);
    expect(reliefs.map(({ to }) => [Math.round(to.x / 10), Math.round(to.y / 10)])).toEqual([
      [-4, 6],
      [-5, -7],
      [7, 0],
      [4, 6],
    ]);
  });

  it('of two bays as near to the neck the first is on the side of +x', () => {
    const outline = ring('-100 -100, 100 -100, 100 100, 60 100, 40 50, 20 100, -20 100, -40 50, -60 100, -100 100');
    for (const shape of [outline, mirror(outline)]) {
      expect(sawLine(shape, 3, BLADE_MM).reliefs.map(({ to }) => Math.sign(to.x))).toEqual([1, -1]);
    }
  });

  it('part two bays that meet at a straight side the blade only touches', () => {
    // A channel 60 wide between two posts, its bottom straight: a corner of 90 degrees at both ends.
    const outline = ring('-100 -100, 100 -100, 100 0, 60 0, 60 -60, -60 -60, -60 0, -100 0');
    const { reliefs } = sawLine(outline, 3, 20);
    expect(reliefs.map(({ to }) => [Math.round(to.x), Math.round(to.y)])).toEqual([
      [57, -57],
      [-57, -57],
    ]);
    for (const { leftMm } of reliefs) expect(leftMm).toBeCloseTo(cornerRestGap(20, 0, 90), 2);
    // 114 between the sides: a blade of 57 touches the bottom at one place.
    expect(sawLine(outline, 3, 56.99).reliefs.length).toBe(2);
  });

  it('end in the middle of a flat bottom, and of two pockets apart in that nearer to the neck, or on the side of +x', () => {
    const cutAt = (bay: string) => {
      const { reliefs } = sawLine(ring(bay), 3, 60);
      expect(reliefs.length).toBe(1);
      return reliefs[0].to;
    };
    // A notch from the right whose bottom is 10 wide, 4 of it left by the offset.
    const flat = cutAt('-100 -100, 100 -100, 100 -25, 40 -5, 40 5, 100 25, 100 100, -100 100');
    expect(flat.x).toBeCloseTo(43, 2);
    expect(flat.y).toBeCloseTo(0, 6);
    // Two notches with a ridge between them.
    const toNeck = cutAt('-100 -100, 100 -100, 100 -45, 40 -20, 80 0, 40 20, 100 45, 100 100, -100 100');
    expect(toNeck.y).toBeGreaterThan(15);
    const toTreble = cutAt('-100 -100, 100 -100, 100 100, 45 100, 20 40, 0 80, -20 40, -45 100, -100 100');
    expect(toTreble.x).toBeGreaterThan(15);
  });

  it('go through a mouth the blade can’t pass', () => {
    // A cave behind a mouth of 16, deepest in its middle.
    const outline = ring(
      '-100 -100, 100 -100, 100 100, 8 100, 8 80, 30 80, 30 50, 0 0, -30 50, -30 80, -8 80, -8 100, -100 100',
    );
    const { line, reliefs } = sawLine(outline, 3, BLADE_MM);
    expect(contains(line, 0, 60)).toBe(true);
    expect(reliefs.length).toBe(1);
    // The offset of a corner whose sides rise by 50 in 30.
    expect(reliefs[0].to.x).toBeCloseTo(0, 5);
    expect(reliefs[0].to.y).toBeCloseTo((3 * Math.hypot(50, 30)) / 30, 2);
    expect(reliefs[0].from.x).toBeCloseTo(0, 5);
    expect(reliefs[0].from.y).toBeCloseTo(103, 2);
    expectClear(outline, 3, reliefs[0].from, reliefs[0].to);
  });

  it('are not said where no straight cut gets', () => {
    // A passage 16 wide that turns by a right angle, and ends 30 further.
    const outline = ring('-100 -100, 100 -100, 100 100, 8 100, 8 24, -38 24, -38 40, -8 40, -8 100, -100 100');
    const { reliefs, blindBays } = sawLine(outline, 3, BLADE_MM);
    expect(reliefs).toEqual([]);
    expect(blindBays.length).toBe(1);
    expect(blindBays[0].at.x).toBeCloseTo(-35, 2);
    expect(blindBays[0].at.y).toBeCloseTo(27, 2);
    // As the crow flies to the blade's circle, which touches the circles of radius 3 about both corners of the mouth.
    const centre = 100 + Math.sqrt((BLADE_MM + 3) ** 2 - 64);
    expect(Math.abs(blindBays[0].leftMm - (Math.hypot(35, centre - 27) - BLADE_MM))).toBeLessThan(OUTSIDE_MM);
  });
});

describe('any outline', () => {
  const distance = fc.double({ min: 0.5, max: 10, noNaN: true });
  const radius = fc.double({ min: 3, max: 60, noNaN: true });

  it('is never nearer to its line than the distance, and the line holds the plain offset', () => {
    fc.assert(
      fc.property(blob, distance, radius, (outline, d, r) => {
        const { line } = sawLine(outline, d, r);
        expect(signedArea(line)).toBeGreaterThan(0);
        for (const [x, y] of cornersAndMiddles(line)) {
          expect(contains(outline, x, y)).toBe(false);
          expect(distanceToEdge(outline, x, y)).toBeGreaterThan(d - GRID_MM);
        }
        for (const [x, y] of cornersAndMiddles(onlyRing(offset([outline], d)))) {
          expect(contains(line, x, y) || distanceToEdge(line, x, y) < GRID_MM).toBe(true);
        }
      }),
    );
  });

  it('has a line that the blade follows: to fill its bends once more, by the library’s own offset, changes nothing', () => {
    fc.assert(
      fc.property(blob, distance, radius, (outline, d, r) => {
        const { line } = sawLine(outline, d, r);
        const again = offset(offset([line], r), -r);
        expect(regionArea(difference(again, [line]))).toBeLessThan(OUTSIDE_MM * perimeter(line));
      }),
      { numRuns: 40 },
    );
  });

  it('mirrored has the mirrored line and the same cuts', () => {
    fc.assert(
      fc.property(blob, distance, radius, (outline, d, r) => {
        const [straight, turned] = [sawLine(outline, d, r), sawLine(mirror(outline), d, r)];
        const back = mirror(turned.line);
        expect(Math.max(apart(straight.line, back), apart(back, straight.line))).toBeLessThan(1e-5);
        const cuts = numbersOf(straight, 1);
        const others = numbersOf(turned, -1);
        expect(others.length).toBe(cuts.length);
        for (const cut of cuts) {
          expect(
            Math.min(...others.map((other) => Math.max(...other.map((n, i) => Math.abs(n - cut[i]))))),
          ).toBeLessThan(1e-5);
        }
      }),
      { numRuns: 40 },
    );
  });

  it('gets straight cuts, clear of the plain offset, that end on it where the saw line leaves most', () => {
    fc.assert(
      fc.property(blob, distance, radius, (outline, d, r) => {
        const { line, reliefs, blindBays } = sawLine(outline, d, r);
        // Seen from the middle all of such an outline's edge is in sight: every bay is open.
        expect(blindBays).toEqual([]);
        for (const { from, to, leftMm } of reliefs) {
          expectClear(outline, d, from, to);
          expect(Math.abs(distanceToEdge(outline, to.x, to.y) - d)).toBeLessThan(OUTSIDE_MM);
          expect(leftMm).toBeGreaterThanOrEqual(0.2);
          expect(distanceToEdge(line, to.x, to.y)).toBeLessThan(leftMm + GRID_MM);
          // So much wood lies on the way in; 0.2 less in the middle of a flat bottom.
          const share = (leftMm - 0.201) / Math.hypot(from.x - to.x, from.y - to.y);
          expect(contains(line, to.x + share * (from.x - to.x), to.y + share * (from.y - to.y))).toBe(true);
          expect(contains(line, from.x, from.y) && distanceToEdge(line, from.x, from.y) > GRID_MM).toBe(false);
        }
        const plain = cornersAndMiddles(onlyRing(evenOffset([outline], d + ARC_TOLERANCE_MM)));
        const most = Math.max(...plain.map(([x, y]) => distanceToEdge(line, x, y)));
        const said = Math.max(0.2, ...reliefs.map(({ leftMm }) => leftMm));
        expect(most).toBeLessThan(said + GRID_MM);
      }),
    );
  });

  it('turned has the turned line', () => {
    fc.assert(
      fc.property(blob, fc.double({ min: 0, max: 360, noNaN: true }), (outline, angleDeg) => {
        const by = { xMm: 12.3, yMm: -45.6, angleDeg };
        const [here, there] = [
          place(sawLine(outline, 3, BLADE_MM).line, by),
          sawLine(place(outline, by), 3, BLADE_MM).line,
        ];
        expect(Math.max(apart(here, there), apart(there, here))).toBeLessThan(2 * OUTSIDE_MM);
      }),
      { numRuns: 40 },
    );
  });
});

it('a distance below zero, no blade, and an outline without an inside are refused', () => {
  const square = Float64Array.of(0, 0, 10, 0, 10, 10, 0, 10);
  expect(() => sawLine(square, -1, 5)).toThrow(RangeError);
  expect(() => sawLine(square, 1, 0)).toThrow(RangeError);
  expect(() => sawLine(new Float64Array(0), 1, 5)).toThrow(RangeError);
});

function at(xMm: number, yMm: number) {
  return { xMm, yMm };
}

function polygonOf(shape: Shape): Polygon {
  const made = shapePolygon(shape);
  if (!made.ok) throw new Error(made.what);
  return made.polygon;
}

function onlyRing(rings: readonly Polygon[]): Polygon {
  return rings.reduce((most, ring) => (signedArea(ring) > signedArea(most) ? ring : most));
}

function cornersAndMiddles(ring: Polygon): (readonly [number, number])[] {
  const points: (readonly [number, number])[] = [];
  for (let i = 0; i < ring.length; i += 2) {
    const j = (i + 2) % ring.length;
    points.push([ring[i], ring[i + 1]], [(ring[i] + ring[j]) / 2, (ring[i + 1] + ring[j + 1]) / 2]);
  }
  return points;
}

/** How far a corner of the one is from the other at most. */
function apart(from: Polygon, to: Polygon): number {
  return Math.max(...cornersAndMiddles(from).map(([x, y]) => distanceToEdge(to, x, y)));
}

function expectClear(outline: Polygon, d: number, from: { x: number; y: number }, to: { x: number; y: number }) {
  for (let i = 0; i <= 100; i++) {
    const [x, y] = [from.x + (i / 100) * (to.x - from.x), from.y + (i / 100) * (to.y - from.y)];
    expect(contains(outline, x, y)).toBe(false);
    expect(distanceToEdge(outline, x, y)).toBeGreaterThan(d - GRID_MM);
  }
}

function numbersOf({ reliefs }: SawLine, side: 1 | -1): number[][] {
  return reliefs.map(({ from, to, leftMm }) => [side * from.x, from.y, side * to.x, to.y, leftMm]);
}

/**
 * Least radius of the circles through three neighbouring corners where a counter-clockwise ring bends inwards. Corners
 * nearer than 1 mm to the one before are left out: over a step s the grid of 1e-6 mm changes a radius R by about
 * 8e-6 R² / s², 0.05 % at a radius of 60.
 */
function tightestBend(ring: Polygon): number {
  const points: (readonly [number, number])[] = [];
  for (let i = 0; i < ring.length; i += 2) {
    const last = points.at(-1);
    if (last === undefined || Math.hypot(ring[i] - last[0], ring[i + 1] - last[1]) > 1)
      points.push([ring[i], ring[i + 1]]);
  }
  let least = Infinity;
  points.forEach(([bx, by], i) => {
    const [ax, ay] = points.at(i - 1)!;
    const [cx, cy] = points[(i + 1) % points.length];
    const twiceArea = (bx - ax) * (cy - ay) - (cx - ax) * (by - ay);
    const sides = Math.hypot(bx - ax, by - ay) * Math.hypot(cx - bx, cy - by) * Math.hypot(cx - ax, cy - ay);
    if (twiceArea < 0) least = Math.min(least, sides / (2 * -twiceArea));
  });
  return least;
}

/** Corners as 'x y, x y, …'. */
function ring(corners: string): Polygon {
  return Float64Array.from(corners.split(', ').flatMap((corner) => corner.split(' ').map(Number)));
}
