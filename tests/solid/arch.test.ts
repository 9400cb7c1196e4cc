/** Heights by the distance from the edge, against every edge asked one by one: nothing here is shared with the fast ways. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { regionContains } from '../../src/geometry/nearness.ts';
import { bounds, regionArea } from '../../src/geometry/measure.ts';
import { difference } from '../../src/geometry/offset.ts';
import type { Polygon, Region } from '../../src/geometry/polygon.ts';
import { reversed } from '../../src/geometry/polygon.ts';
import { coverage } from '../../src/geometry/solid/coverage.ts';
import { distanceBand } from '../../src/geometry/solid/distance-band.ts';
import { edgeLine } from '../../src/geometry/solid/edge-line.ts';
import { downBy } from '../../src/geometry/solid/face.ts';
import { fieldOf } from '../../src/geometry/solid/field.ts';
import type { Grid } from '../../src/geometry/solid/grid.ts';
import { centreX, centreY, gridOver } from '../../src/geometry/solid/grid.ts';
import { bevel, type Profile, profileAt } from '../../src/geometry/solid/profile.ts';
import { backAt, topAt } from '../../src/geometry/solid/solid.ts';
import { translate } from '../../src/geometry/transform.ts';
import { blob } from '../geometry/polygons.ts';
import { ARCH, ARCH_RISE_MM, archDown, BEVEL, BEVEL_RISE_MM, bevelDown, byEveryEdge } from './by-hand.ts';
import { carved, circle, face, near, rounded, solid } from './make.ts';
import { body, horned } from './outlines.ts';

const HEIGHT_MM = 0.02;
const EXACT_MM = 1e-9;
const RUNS = { seed: 20260301, numRuns: 25 };

function forCells(grid: Grid, visit: (x: number, y: number, cell: number) => void): void {
  for (let cell = 0; cell < grid.cols * grid.rows; cell++) {
    visit(centreX(grid, cell % grid.cols), centreY(grid, Math.floor(cell / grid.cols)), cell);
  }
}

describe('profile', () => {
  it('is what its formula says, written out by hand', () => {
    for (let d = 0; d < 60; d += 0.05) {
      near(`arch at ${d}`, downBy({ riseMm: ARCH_RISE_MM }, profileAt(ARCH, d)), archDown(d), 1e-12);
      near(`bevel at ${d}`, downBy({ riseMm: BEVEL_RISE_MM }, profileAt(BEVEL, d)), bevelDown(d), 1e-12);
    }
  });
});

describe('height field', () => {
  const shapes: readonly (readonly [string, Polygon, number, Profile, (d: number) => number])[] = [
    ['arch with a recurve on a body', body, ARCH_RISE_MM, ARCH, archDown],
    ['arch with a recurve on a body with a sharp bay', horned, ARCH_RISE_MM, ARCH, archDown],
    ['bevel on a body', body, BEVEL_RISE_MM, BEVEL, bevelDown],
    ['bevel on a body with a sharp bay', horned, BEVEL_RISE_MM, BEVEL, bevelDown],
  ];
  it.each(shapes)('%s', (_, outline, riseMm, profile, down) => {
    const { grid, share, least } = fieldOf(solid({ outline, heightMm: 50, top: carved(outline, riseMm, profile) }));
    let [worst, cells] = [0, 0];
    forCells(grid, (x, y, cell) => {
      if (share[cell] === 0) return expect(least[cell]).toBeNaN();
      worst = Math.max(worst, Math.abs(50 - down(byEveryEdge(outline, true, x, y)) - least[cell]!));
      cells++;
    });
    expect(cells).toBeGreaterThan(90_000);
    near('height', worst, 0, HEIGHT_MM);
  });

  it('says in bulk what the faces say point by point, with all that a face can have', () => {
    const edge = edgeLine(body, true);
    // Counter-clockwise from the lower right to the upper right.
    const along = edgeLine(body.slice(40, 100), false);
    const top = face(body, {
      riseMm: 4,
      carve: { from: along, profile: bevel(0, 25.3) },
      contours: [{ kind: 'plane', slope: 0.12, xMm: -90, yMm: 60, towardX: -0.8, towardY: 0.6 }],
      ledge: { widthMm: 2.2, depthMm: 6.5 },
    });
    const back = face(body, {
      edge,
      roundMm: 7.5,
      contours: [{ kind: 'dish', widthMm: 80, depthMm: 9, xMm: -40, yMm: 150, towardX: -0.6, towardY: 0.8 }],
    });
    const whole = solid({ outline: body, heightMm: 46, top, back });
    const { grid, share, least } = fieldOf(whole);
    let worst = 0;
    forCells(grid, (x, y, cell) => {
      // A cell on the wall of the ledge has the least of both sides.
      if (share[cell] === 0 || Math.abs(edge.at(x, y) - 2.2) < Math.SQRT1_2) return;
      worst = Math.max(worst, Math.abs(Math.max(0, topAt(whole, x, y) - backAt(whole, x, y)) - least[cell]!));
    });
    near('height', worst, 0, HEIGHT_MM);
  });
});

/** Shapes with what is hard: bays, sharp corners that point inward, a slit of no width. */
const hard: readonly (readonly [string, Polygon])[] = [
  ['a body', body],
  ['a body with a sharp bay', horned],
  ['a needle pointing inward', Float64Array.of(-80, -60, 90, -70, 85, 75, 3.01, 70, 0, -50, -3.02, 70, -70, 65)],
  ['a slit', Float64Array.of(-50, -50, 50, -50, 50, 50, 0.3, 50, 0.3, -20, 0.3, 50, -50, 50)],
  ['corners given twice', Float64Array.of(0, 0, 90, 0, 90, 80, 45, 30, 45, 30, 0, 80, 0, 0)],
  ['a star', star(9, 100, 22)],
];

function star(points: number, outer: number, inner: number): Polygon {
  return Float64Array.from({ length: 4 * points }, (_, k) => {
    const i = Math.floor(k / 2);
    const [radius, angle] = [i % 2 === 0 ? outer : inner, (Math.PI * i) / points];
    return radius * (k % 2 === 0 ? Math.cos(angle) : Math.sin(angle));
  });
}

const REACH_MM = 31.7;

/** Of all cells the region wants: exact within the reach, none nearer than it is beyond. */
function worstOf(
  band: Float64Array,
  grid: Grid,
  asks: (cell: number) => boolean,
  brute: (x: number, y: number) => number,
) {
  let worst = 0;
  forCells(grid, (x, y, cell) => {
    if (!asks(cell)) return;
    const exact = brute(x, y);
    const off = exact <= REACH_MM ? Math.abs(band[cell]! - exact) : Math.max(0, REACH_MM - band[cell]!);
    worst = Math.max(worst, off);
  });
  return worst;
}

function expectClosed(outline: Polygon, cellMm: number): void {
  const line = edgeLine(outline, true);
  const { grid, share } = coverage([outline], cellMm);
  const brute = (x: number, y: number) => byEveryEdge(outline, true, x, y);
  // Cells the edge runs through count too, wherever their middle lies.
  const band = distanceBand(line, REACH_MM, grid);
  near(
    'band',
    worstOf(band, grid, (cell) => share[cell]! > 0, brute),
    0,
    EXACT_MM,
  );
}

function expectOpen(points: Float64Array, cellMm: number): void {
  const { minX, minY, maxX, maxY } = bounds(points)!;
  const grid = gridOver({ minX: minX - 50, minY: minY - 50, maxX: maxX + 50, maxY: maxY + 50 }, cellMm);
  const band = distanceBand(edgeLine(points, false), REACH_MM, grid);
  near(
    'band',
    worstOf(
      band,
      grid,
      () => true,
      (x, y) => byEveryEdge(points, false, x, y),
    ),
    0,
    EXACT_MM,
  );
}

describe('distance to the middle of every cell', () => {
  it.each(hard)('from the edge of %s', (_, outline) => expectClosed(outline, 1));

  it.each(hard)('from part of the edge of %s, on both sides', (_, outline) => {
    expectOpen(outline.slice(0, outline.length - 4), 2.3);
  });

  const cell = fc.constantFrom(1, 1.7, 2.5);
  it('from the edge of any blob', () => {
    fc.assert(
      fc.property(blob, cell, (outline, cellMm) => expectClosed(translate(outline, 0.31, -0.77), cellMm)),
      RUNS,
    );
  });

  it('from any open line', () => {
    fc.assert(
      fc.property(blob, cell, (outline, cellMm) => expectOpen(outline, cellMm)),
      RUNS,
    );
  });
});

describe('distance at a point', () => {
  const spot = fc.double({ min: -220, max: 220, noNaN: true });
  const spots = fc.array(fc.tuple(spot, spot), { minLength: 200, maxLength: 200 });

  it.each(hard)('from the edge of %s', (_, outline) => {
    fc.assert(
      fc.property(spots, (points) => {
        const [closed, open] = [edgeLine(outline, true), edgeLine(outline, false)];
        const off = points.flatMap(([x, y]) => [
          Math.abs(closed.at(x, y) - byEveryEdge(outline, true, x, y)),
          Math.abs(open.at(x, y) - byEveryEdge(outline, false, x, y)),
        ]);
        near('distance', Math.max(...off), 0, EXACT_MM);
      }),
      RUNS,
    );
  });

  it('from a point', () => {
    near('point', edgeLine(Float64Array.of(3, 4), false).at(0, 0), 5, 1e-12);
  });
});

describe('shares of cells', () => {
  function expectShares(region: Region, cellMm: number): void {
    const { grid, share } = coverage(region, cellMm);
    const area = regionArea(region);
    near('area', (share.reduce((sum, part) => sum + part, 0) * cellMm ** 2) / area, 1, 1e-9);
    const [least, most] = share.reduce(([low, high], part) => [Math.min(low, part), Math.max(high, part)], [0, 1]);
    near('least share', least, 0, 1e-9);
    near('most share', most, 1, 1e-9);
    // And in the right place: cells wholly in or out are so by their middle too.
    let wrong = 0;
    forCells(grid, (x, y, cell) => {
      if (share[cell]! > 1e-9 && share[cell]! < 1 - 1e-9) return;
      if (regionContains(region, x, y) !== share[cell]! > 0.5) wrong++;
    });
    expect(wrong).toBe(0);
  }

  const holed: Region = [
    rounded(120.3, 90.7, 11),
    reversed(circle(20.2, 25, 3, 0.01)),
    reversed(circle(13, -30, 0, 0.01)),
  ];
  it.each([...hard.slice(0, 3), hard[5]!, ['holes', holed] as const])('of %s', (_, plan) => {
    const region = plan instanceof Float64Array ? [plan] : plan;
    for (const cellMm of [1, 0.7, 3]) expectShares(region, cellMm);
  });

  it('of what lies on the lattice itself', () => {
    const square = Float64Array.of(-3, -2, 5, -2, 5, 4, -3, 4);
    const { grid, share } = coverage([square], 1);
    expect([grid.cols, grid.rows]).toEqual([8, 6]);
    expect(new Set(share)).toEqual(new Set([1]));
  });

  it('of any blob, and of one less another', () => {
    fc.assert(
      fc.property(blob, blob, fc.double({ min: 0.4, max: 4, noNaN: true }), (one, other, cellMm) => {
        expectShares([one], cellMm);
        const rest = difference([one], [translate(other, 31, -17)]);
        if (rest.length > 0 && regionArea(rest) > 1) expectShares(rest, cellMm);
      }),
      RUNS,
    );
  });

  it('of a triangle, cell by cell', () => {
    // Below the line y = x / 2: cells of the first row hold 1/4 and 3/4, those of the second the same two columns on.
    const { share } = coverage([Float64Array.of(0, 0, 4, 0, 4, 2)], 1);
    expect([...share]).toEqual([0.25, 0.75, 1, 1, 0, 0, 0.25, 0.75]);
  });
});
