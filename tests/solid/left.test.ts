/**
 * Wood left, against closed forms and against looking everywhere. Distance of skew lines: |(p − q)·(u × v)| / |u × v|; of a
 * point of a bar from a plane: less its radius. Both in any handbook of analytic geometry.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bounds } from '../../src/geometry/measure.ts';
import { regionContains } from '../../src/geometry/nearness.ts';
import { difference, intersection } from '../../src/geometry/offset.ts';
import type { Polygon, Region } from '../../src/geometry/polygon.ts';
import { forEachEdge, reversed } from '../../src/geometry/polygon.ts';
import { edgeLine } from '../../src/geometry/solid/edge-line.ts';
import { lowestOver } from '../../src/geometry/solid/lowest.ts';
import { bevel } from '../../src/geometry/solid/profile.ts';
import type { Floor, Tube } from '../../src/geometry/solid/solid.ts';
import { floorAt } from '../../src/geometry/solid/solid.ts';
import type { Left } from '../../src/geometry/solid/wood-left.ts';
import { FAR_MM, leftBetween, leftToFace, leftToSide } from '../../src/geometry/solid/wood-left.ts';
import { blob } from '../geometry/polygons.ts';
import { ARCH, ARCH_RISE_MM, archDown } from './by-hand.ts';
import { box, carved, chamber, circle, face, near, pocket, rounded, solid, type Triple, tube } from './make.ts';
import { body, horned } from './outlines.ts';

const WOOD_MM = 0.02;
/** Below what is there by looking everywhere: only what looking leaves out between two looks. */
const BELOW_MM = 0.002;
const LOOK_MM = 0.05;
const SEED = 20260302;

function expectLeft(left: Left | undefined, mm: number, through: Left['through'], sharedMm2?: number): void {
  near('wood left', left!.mm, mm, WOOD_MM);
  expect(left!.through).toBe(through);
  if (sharedMm2 !== undefined) near('shared', left!.sharedMm2, sharedMm2, 1e-4 * sharedMm2 + 1e-9);
}

/** Everywhere on a grid, and along the edge. */
function byLooking(region: Region, f: (x: number, y: number) => number): number {
  let least = Infinity;
  const boxes = region.map((ring) => bounds(ring)!);
  for (const { minX, minY, maxX, maxY } of boxes) {
    for (let y = minY; y <= maxY; y += LOOK_MM) {
      for (let x = minX; x <= maxX; x += LOOK_MM) {
        const value = f(x, y);
        if (value < least && regionContains(region, x, y)) least = value;
      }
    }
  }
  for (const ring of region) {
    forEachEdge(ring, (x0, y0, x1, y1) => {
      const steps = Math.ceil(Math.hypot(x1 - x0, y1 - y0) / LOOK_MM);
      for (let i = 0; i <= steps; i++) {
        least = Math.min(least, f(x0 + ((x1 - x0) * i) / steps, y0 + ((y1 - y0) * i) / steps));
      }
    });
  }
  return least;
}

describe('under an arch', () => {
  const H = 49.3;

  function expectAsLooked(outline: Polygon, plan: Polygon, floor: number | Floor): void {
    const whole = solid({ outline, heightMm: H, top: carved(outline, ARCH_RISE_MM, ARCH) });
    const cut = pocket('cut', plan, 'back', floor);
    // Its distances are right to rounding: arch.test.ts.
    const edge = edgeLine(outline, true);
    const region = intersection([plan], [outline]);
    const looked = byLooking(region, (x, y) => H - archDown(edge.at(x, y)) - floorAt(cut.floor, y));
    const left = leftToFace(whole, cut, 'top')!;
    near('wood left', left.mm, looked, WOOD_MM);
    near('never less than there is', Math.max(0, looked - left.mm), 0, BELOW_MM);
    // What is said stands where it is said.
    near('there', H - archDown(edge.at(left.xMm, left.yMm)) - floorAt(cut.floor, left.yMm), left.mm, 1e-9);
    expect(left.through).toBe('floor');
  }

  it.each([
    ['crown to land', body, rounded(78, 62, 6, 100, -66), 38],
    ['all of it on the crown', body, rounded(60, 50, 6, 0, 0), 38],
    ['all of it on the land, out of the side', body, rounded(30, 12, 3, 30, -186), 38],
    ['land on two sides', body, rounded(120, 60, 6, 100, -140, 30), 38],
    ['across the whole body', body, rounded(330, 20, 0, -5, -60), 38],
    ['in a horn', horned, rounded(34, 70, 4, 118, 150, -12), 38],
    ['round the end of a sharp bay', horned, rounded(70, 50, 8, 40, 90), 38],
    ['a floor that rises towards the edge', body, rounded(56, 76, 6, 0, 180), { zMm: 30, slope: 0.06, yMm: 142 }],
    ['a floor that falls towards the edge', body, rounded(56, 76, 6, 0, 180), { zMm: 38, slope: -0.09, yMm: 142 }],
    ['a pilot hole', body, circle(1.25, 140, -60, 0.01), 38],
  ] as const)('%s', (_, outline, plan, floor) => {
    expectAsLooked(outline, plan, floor);
  });

  it('anywhere, at any angle', () => {
    const at = fc.tuple(
      fc.double({ min: -150, max: 150, noNaN: true }),
      fc.double({ min: -180, max: 210, noNaN: true }),
      fc.double({ min: 0, max: 180, noNaN: true }),
      fc.double({ min: -0.08, max: 0.08, noNaN: true }),
    );
    fc.assert(
      fc.property(at, fc.constantFrom(body, horned), ([x, y, angle, slope], outline) => {
        const plan = rounded(31, 19, 4, x, y, angle);
        fc.pre(intersection([plan], [outline]).length > 0);
        expectAsLooked(outline, plan, { zMm: 30, slope, yMm: y });
      }),
      { seed: SEED, numRuns: 30 },
    );
  });
});

describe('to a face, in closed form', () => {
  const [R, H] = [150, 45];
  const outline = circle(R);

  it('a round pocket under the bevel of a round body: at its point nearest to the edge', () => {
    const whole = solid({ outline, heightMm: H, top: carved(outline, 6, bevel(5, 30)) });
    const hole = pocket('hole', circle(20, 60, 80), 'back', 36.2);
    // 150 − 100 − 20 = 30 mm from the edge: 25 of 30 mm up the bevel.
    expectLeft(leftToFace(whole, hole, 'top'), H - 1 - 36.2, 'floor', Math.PI * 400);
    expect(leftToFace(whole, hole, 'back')).toBeUndefined();
  });

  it('a pocket under a plane: at a corner', () => {
    const plane = { kind: 'plane', slope: 0.2, xMm: 10, yMm: 0, towardX: 0.6, towardY: 0.8 } as const;
    const whole = solid({ outline, heightMm: H, back: face(outline, { contours: [plane] }) });
    // Its corner (60, 40) is 62 mm beyond the line.
    const cut = pocket('cut', box(20, 0, 60, 40), 'top', 20.5);
    expectLeft(leftToFace(whole, cut, 'back'), 20.5 - 0.2 * ((60 - 10) * 0.6 + 40 * 0.8), 'floor', 1600);
  });

  it('a chamber: its floor over the back, the cap over it', () => {
    const whole = solid({ outline, heightMm: H });
    const cut = chamber('chamber', circle(30), { zMm: 12, slope: 0.1, yMm: 0 }, 33);
    expectLeft(leftToFace(whole, cut, 'top'), H - 33, 'floor', Math.PI * 900);
    expectLeft(leftToFace(whole, cut, 'back'), 12 - 3, 'floor', Math.PI * 900);
  });

  it('less what opens there: only what is not in a seat counts', () => {
    const whole = solid({ outline, heightMm: H, top: carved(outline, 6, bevel(5, 30)) });
    const hole = pocket('hole', box(100, -10, 130, 10), 'back', 36.2);
    // The corners of the rest that are nearest to the edge: (118, ±10).
    const rest = leftToFace(whole, hole, 'top', [box(118, -20, 140, 20)]);
    expectLeft(rest, H - (6 * (35 - (R - Math.hypot(118, 10)))) / 30 - 36.2, 'floor', 360);
    expect(leftToFace(whole, hole, 'top', [box(90, -20, 140, 20)])).toBeUndefined();
  });

  it('a bar: level, dipping, upright', () => {
    const whole = solid({ outline, heightMm: H });
    const level = tube('level', [-50, 3.3, 20], [50, 17, 20], 4);
    expectLeft(leftToFace(whole, level, 'top'), H - 24, 'floor');
    expectLeft(leftToFace(whole, level, 'back'), 16, 'floor');
    // 30 down over 80 along: the rim of its flat ends lies r · cos of the dip above and below the axis.
    const dipping = tube('dipping', [0, 0, 40], [48, 64, 10], 3);
    const rim = (3 * 80) / Math.hypot(80, 30);
    expectLeft(leftToFace(whole, dipping, 'top'), H - 40 - rim, 'floor');
    expectLeft(leftToFace(whole, dipping, 'back'), 10 - rim, 'floor');
    const thin = tube('thin, between all places of a grid', [-7.8, -37.4, 20], [2.1, -16.8, 20], 0.2);
    expectLeft(leftToFace(whole, thin, 'top'), H - 20.2, 'floor');
    const upright = tube('upright', [30, 30, 8], [30, 30, 41], 5);
    expectLeft(leftToFace(whole, upright, 'top'), 4, 'floor');
    expectLeft(leftToFace(whole, upright, 'back'), 8, 'floor');
  });

  it('through the face: below nothing', () => {
    const whole = solid({ outline, heightMm: H, top: carved(outline, 6, bevel(5, 30)) });
    const deep = pocket('deep', box(100, -10, 148, 10), 'back', 40);
    expectLeft(leftToFace(whole, deep, 'top'), -1, 'floor');
  });

  it('nothing to say of what lies beside the body', () => {
    expect(
      leftToFace(solid({ outline, heightMm: H }), pocket('out', box(200, 0, 220, 20), 'back', 9), 'top'),
    ).toBeUndefined();
  });
});

describe('to the side', () => {
  it('a circle in a circle, a bar, a pocket with corners', () => {
    const outline = circle(150);
    expectLeft(leftToSide(outline, pocket('hole', circle(20, 60, 80), 'back', 9)), 30, 'wall', 0);
    expectLeft(leftToSide(outline, tube('bar', [0, 0, 20], [120, 0, 20], 10)), 150 - Math.hypot(120, 10), 'wall', 0);
    const dipping = leftToSide(outline, tube('dipping', [0, 0, 40], [80, 0, 20], 5));
    // Seen from above its end reaches r · sin of the dip further.
    expectLeft(dipping, 70 - (5 * 20) / Math.hypot(80, 20), 'wall', 0);
    expectLeft(leftToSide(outline, tube('upright', [90, 0, 5], [90, 0, 20], 6)), 54, 'wall', 0);
    expectLeft(
      leftToSide(outline, pocket('box', box(-30, -40, 90, 20), 'top', 9)),
      150 - Math.hypot(90, 40),
      'wall',
      0,
    );
  });

  it('below nothing by how far it comes out', () => {
    const outline = box(-150, -200, 150, 200);
    expectLeft(leftToSide(outline, pocket('neck', box(-28, 150, 28, 212.5), 'top', 20)), -12.5, 'wall', 0);
    expectLeft(leftToSide(outline, tube('bore', [150, 0, 20], [100, 0, 20], 5)), 0, 'wall', 0);
    // A corner of the side reaches 8 mm into the pocket, though all corners of the pocket lie in the body.
    const notched = Float64Array.of(-150, -200, 150, -200, 150, -3, 92, 0, 150, 3, 150, 200, -150, 200);
    expectLeft(leftToSide(notched, pocket('cut', box(40, -30, 100, 30), 'back', 20)), -8, 'wall', 0);
  });
});

describe('between pockets', () => {
  it('one above the other, floors sloping: at the end where they are nearest', () => {
    const up = pocket('up', box(-20, 0, 20, 50), 'top', { zMm: 30, slope: 0.1, yMm: 0 });
    const down = pocket('down', box(-10, 20, 40, 90), 'back', { zMm: 18, slope: -0.05, yMm: 20 });
    // They share x −10 … 20, y 20 … 50; above 32 … 35, below 18 … 16.5.
    expectLeft(leftBetween(up, down), 14, 'floor', 900);
    expectLeft(leftBetween(down, up), 14, 'floor', 900);
    const steep = pocket('down', box(-10, 20, 40, 90), 'back', { zMm: 18, slope: 0.25, yMm: 20 });
    expectLeft(leftBetween(up, steep), 35 - 25.5, 'floor', 900);
    // Under a chamber, and over one.
    const between = chamber('chamber', box(-10, 20, 40, 90), 20, 27);
    expectLeft(leftBetween(between, up), 5, 'floor', 900);
    expectLeft(leftBetween(pocket('low', box(0, 0, 30, 30), 'back', 12.5), between), 7.5, 'floor', 300);
  });

  it('that meet: less than nothing, and how much they share', () => {
    const up = pocket('up', box(-20, 0, 20, 50), 'top', 20);
    expectLeft(leftBetween(up, pocket('down', circle(10, 0, 20), 'back', 25)), -5, 'floor', Math.PI * 100);
    expectLeft(leftBetween(up, chamber('chamber', box(10, 30, 60, 60), 15, 28)), -8, 'floor', 200);
    const same = leftBetween(up, pocket('other', box(10, 30, 60, 60), 'top', 30))!;
    expect([same.mm, same.through]).toEqual([-Infinity, 'floor']);
    near('shared', same.sharedMm2, 200, 1e-6);
  });

  it('beside each other: across the wall, and over its edge where one ends above the other', () => {
    const one = pocket('one', box(0, 0, 30, 40), 'top', 20);
    expectLeft(leftBetween(one, pocket('two', box(36, 10, 60, 30), 'top', 30)), 6, 'wall', 0);
    expectLeft(leftBetween(one, pocket('deep', box(36, 10, 60, 30), 'back', 25)), 6, 'wall', 0);
    expectLeft(leftBetween(one, pocket('low', box(36, 10, 60, 30), 'back', 12)), Math.hypot(6, 8), 'wall', 0);
    expectLeft(leftBetween(one, pocket('corner', box(33, 44, 60, 70), 'back', 8)), Math.hypot(3, 4, 12), 'wall', 0);
    expectLeft(leftBetween(one, chamber('chamber', circle(10, 45, 20), 5, 14)), Math.hypot(5, 6), 'wall', 0);
    expectLeft(leftBetween(one, pocket('touching', box(30, 10, 60, 30), 'top', 30)), 0, 'wall', 0);
  });

  it('beside each other with a sloping floor: where both the wall and the step are least', () => {
    const one = pocket('one', box(0, 0, 30, 80), 'top', { zMm: 34, slope: -0.1, yMm: 0 });
    const low = pocket('low', box(36, -10, 60, 90), 'back', 20);
    // Down to 26 at its far end.
    expectLeft(leftBetween(one, low), Math.hypot(6, 6), 'wall', 0);
    expectLeft(leftBetween(low, one), Math.hypot(6, 6), 'wall', 0);
  });

  it('round an island', () => {
    const ring = pocket('ring', [box(0, 0, 80, 80), reversed(box(20, 20, 60, 60))], 'top', 10);
    expectLeft(leftBetween(ring, pocket('in it', circle(8, 40, 38), 'top', 10)), 10, 'wall', 0);
    expectLeft(leftBetween(ring, tube('in it', [40, 30, 20], [40, 50, 20], 3)), 10 - 3, 'wall', 0);
  });

  it('too far apart to matter', () => {
    const one = pocket('one', box(0, 0, 30, 40), 'top', 20);
    const far = pocket('far', box(30 + FAR_MM + 0.1, 0, 100, 40), 'top', 20);
    expect(leftBetween(one, far)).toBeUndefined();
    expectLeft(leftBetween(one, pocket('near', box(29.9 + FAR_MM, 0, 100, 40), 'top', 20)), FAR_MM - 0.1, 'wall', 0);
  });
});

describe('between a bar and a pocket', () => {
  const cut = pocket('cut', box(-30, -20, 30, 20), 'top', 22);

  it('below its floor, beside its wall, off its corner and its edge', () => {
    expectLeft(leftBetween(cut, tube('below', [-60, 3, 12], [60, 8, 12], 4)), 6, 'wall');
    // Dipping 1 in 10, its axis 7 below the edge where it comes nearest: square to the axis.
    expectLeft(leftBetween(tube('below', [-60, 3, 18], [60, 3, 6], 4), cut), 7 / Math.hypot(1, 0.1) - 4, 'wall');
    expectLeft(leftBetween(cut, tube('beside', [40, -60, 30], [40, 60, 30], 3)), 7, 'wall');
    expectLeft(leftBetween(cut, tube('off its edge', [36, -60, 14], [36, 60, 14], 3)), Math.hypot(6, 8) - 3, 'wall');
    // A level line 45° past the corner (30, 20): 50 − x − y = 0 moved out by 10.
    const out = 10 * Math.SQRT1_2;
    const past: readonly Triple[] = [
      [30 + out + 40, 20 + out - 40, 30],
      [30 + out - 40, 20 + out + 40, 30],
    ];
    expectLeft(leftBetween(cut, tube('past', past[0]!, past[1]!, 2.5)), 7.5, 'wall');
  });

  it('with a flat end towards the wall: as if it were round, so never too much', () => {
    expectLeft(leftBetween(cut, tube('towards', [90, 0, 30], [38, 0, 30], 3)), 8 - 3, 'wall');
  });

  it('that runs into it: less than nothing', () => {
    expect(leftBetween(cut, tube('into', [90, 0, 30], [20, 0, 30], 3))!.mm).toBeLessThan(0);
    // The axis 2 below the floor: 1 mm of the bar is in the pocket.
    expectLeft(leftBetween(cut, tube('grazing', [-60, 0, 20], [60, 0, 20], 3)), -1, 'wall');
  });

  it('past two prongs of one pocket: the nearer of them, wherever it starts', () => {
    const prongs = Float64Array.of(0, 0, 80, 0, 80, 40, 70, 40, 70, 10, 10, 10, 10, 36, 0, 36);
    const pronged = pocket('pronged', prongs, 'back', 30);
    expectLeft(leftBetween(pronged, tube('past', [-10, 45, 20], [95, 45, 20], 2)), 3, 'wall');
    expectLeft(leftBetween(pronged, tube('back', [95, 45, 20], [-10, 45, 20], 2)), 3, 'wall');
  });

  it('under a sloping floor', () => {
    const sloping = pocket('sloping', box(-30, -20, 30, 20), 'top', { zMm: 22, slope: 0.05, yMm: 0 });
    expectLeft(leftBetween(sloping, tube('below', [0, -60, 12], [0, 60, 12], 4)), 22 - 1 - 12 - 4, 'wall');
    // Further on than its end the floor is not there.
    expectLeft(leftBetween(sloping, tube('ahead', [0, -90, 12], [0, -28, 12], 4)), Math.hypot(8, 9) - 4, 'wall');
  });
});

describe('between bars', () => {
  it('parallel, crossing above each other, meeting, end to end', () => {
    const bar = tube('bar', [-50, 0, 20], [50, 0, 20], 4);
    expectLeft(leftBetween(bar, tube('beside', [-20, 12, 25], [20, 12, 25], 3)), 13 - 7, 'wall');
    expectLeft(leftBetween(bar, tube('above', [3.1, -40, 31], [3.1, 40, 31], 3)), 11 - 7, 'wall');
    expectLeft(leftBetween(bar, tube('meeting', [-30, -45, 5], [20, 30, 30], 3)), -7, 'wall');
    expectLeft(leftBetween(bar, tube('in line', [60, 0, 20], [90, 0, 20], 3)), 10 - 7, 'wall');
  });

  it('skew, anywhere', () => {
    const place = (reach: number) => fc.double({ min: -reach, max: reach, noNaN: true });
    const point = fc.tuple(place(40), place(40), place(20));
    fc.assert(
      fc.property(point, point, point, point, (a, b, c, d) => {
        const [one, other] = [tube('one', a, b, 1.5), tube('other', c, d, 2.5)];
        fc.pre(Math.hypot(...minus(a, b)) > 1 && Math.hypot(...minus(c, d)) > 1);
        const left = leftBetween(one, other);
        fc.pre(left !== undefined);
        near('wood left', left.mm, axesApart(one, other) - 4, WOOD_MM);
        const swapped = leftBetween(other, one)!;
        near('either way', swapped.mm, left.mm, WOOD_MM);
      }),
      { seed: SEED, numRuns: 400 },
    );
  });
});

/** Least distance of two straight pieces: of the lines where both feet lie on the pieces, else from an end of one. */
function axesApart(one: Tube, other: Tube): number {
  const [p, q] = [vector(one.from), vector(other.from)];
  const [u, v] = [minus(vector(one.to), p), minus(vector(other.to), q)];
  const [w, n] = [minus(q, p), cross(u, v)];
  const square = dot(n, n);
  const [s, t] = [dot(cross(w, v), n) / square, dot(cross(w, u), n) / square];
  if (square > 1e-9 && s >= 0 && s <= 1 && t >= 0 && t <= 1) return Math.abs(dot(w, n)) / Math.sqrt(square);
  const ends = [toPiece(p, q, v), toPiece(vector(one.to), q, v), toPiece(q, p, u), toPiece(vector(other.to), p, u)];
  return Math.min(...ends);
}

const vector = ({ xMm, yMm, zMm }: Tube['from']): Triple => [xMm, yMm, zMm];
const minus = (a: Triple, b: Triple): Triple => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const dot = (a: Triple, b: Triple): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Triple, b: Triple): Triple => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
function toPiece(x: Triple, from: Triple, along: Triple): number {
  const t = Math.min(1, Math.max(0, dot(minus(x, from), along) / dot(along, along)));
  const off = minus(x, [from[0] + t * along[0], from[1] + t * along[1], from[2] + t * along[2]]);
  return Math.hypot(...off);
}

describe('the least of a function over a region', () => {
  it('of a plane: at a corner', () => {
    const way = fc.double({ min: 0, max: 2 * Math.PI, noNaN: true });
    fc.assert(
      fc.property(blob, blob, way, (one, other, angle) => {
        const region = difference([one], [other.map((mm) => mm / 3)]);
        fc.pre(region.length > 0);
        const f = (x: number, y: number) => 0.3 * (x * Math.cos(angle) + y * Math.sin(angle));
        let exact = Infinity;
        for (const ring of region) forEachEdge(ring, (x, y) => (exact = Math.min(exact, f(x, y))));
        near('least', lowestOver(region, f)!.value, exact, 0.001);
      }),
      { seed: SEED, numRuns: 60 },
    );
  });

  it('of a bowl: at its bottom, or on the edge nearest to it', () => {
    const at = fc.double({ min: -170, max: 170, noNaN: true });
    fc.assert(
      fc.property(blob, at, at, (outline, x0, y0) => {
        const inside = regionContains([outline], x0, y0);
        const exact = inside ? 0 : edgeLine(outline, true).at(x0, y0);
        const found = lowestOver([outline], (x, y) => Math.hypot(x - x0, y - y0))!;
        near('least', found.value, exact, 0.002);
      }),
      { seed: SEED, numRuns: 60 },
    );
  });

  it('the deeper of many hollows, though a look from above falls better into the others', () => {
    // Dips every 8.6 mm along x, of 1 but for one of 1.02, half a look beside where looks fall.
    for (const deep of [0, 1, 2, 3, 4, 5]) {
      const f = (x: number, y: number) => {
        const here = Math.round(x / 8.6) === deep ? 1.02 : 1;
        return -here * Math.cos((2 * Math.PI * x) / 8.6) + ((y - 4.4) / 4) ** 2;
      };
      near('least', lowestOver([box(-3.2, 0, 47.3, 9)], f)!.value, -1.02, 0.001);
    }
  });

  it('over a hole that a look on a grid misses', () => {
    near('least', lowestOver([circle(0.4, 3, 4)], (x) => 0.5 * x)!.value, 1.3, 0.001);
  });

  it('of nothing: nothing', () => {
    expect(lowestOver([], () => 0)).toBeUndefined();
    expect(lowestOver([box(0, 0, 9, 9)], () => Infinity)).toBeUndefined();
  });
});
