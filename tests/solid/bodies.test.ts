/**
 * Bodies whose volume, centre and thickness are known in closed form. Sizes lie off the lattice of the cells on purpose.
 *
 * Sources: prism V = A·h. Circular segment A = R² acos((R − d)/R) − (R − d)√(2Rd − d²). Frustum V = πh/3·(a² + ab + b²).
 * Solid of revolution V = 2π·r̄·A (second theorem of Pappus and Guldin); spandrel between a quarter circle and its corner:
 * A = (1 − π/4) r², centre (10 − 3π)/(12 − 3π)·r = 0.2234 r from the corner. Two equal cylinders that cross at right
 * angles share 16 r³/3 (Archimedes; Steinmetz). All in any handbook of mensuration.
 */
import { describe, expect, it } from 'vitest';
import { layersAt } from '../../src/geometry/solid/column.ts';
import { FACE, fieldOf } from '../../src/geometry/solid/field.ts';
import { bevel } from '../../src/geometry/solid/profile.ts';
import type { Solid } from '../../src/geometry/solid/solid.ts';
import {
  box,
  carved,
  cellAt,
  centreOf,
  chamber,
  circle,
  face,
  near,
  pocket,
  rounded,
  solid,
  type Triple,
  tube,
} from './make.ts';

/** Shares of the body's and of a void's volume; mm. */
const VOLUME = 1e-3;
const REMOVED = 5e-3;
const THICKNESS_MM = 0.02;
const CENTRE_MM = 0.05;

/** A piece of a body with its own centre; less than nothing where it is taken away. */
type Part = readonly [mm3: number, centre: Triple];

const prism = (area: number, low: number, high: number, x = 0, y = 0): Part => [
  area * (high - low),
  [x, y, (low + high) / 2],
];
const less = ([mm3, centre]: Part): Part => [-mm3, centre];

interface Truth {
  readonly body: Solid;
  readonly parts: readonly Part[];
  /** Of each void, after the ones before it. */
  readonly removed?: readonly number[];
  /** At some points: thickness of each layer from the back up. */
  readonly spots?: readonly (readonly [x: number, y: number, ...layers: number[]])[];
}

function expectTruth({ body, parts, removed = [], spots = [] }: Truth): void {
  const field = fieldOf(body);
  const volume = parts.reduce((sum, [mm3]) => sum + mm3, 0);
  near('volume', field.volumeMm3 / volume, 1, VOLUME);
  centreOf(field).forEach((found, axis) => {
    const moment = parts.reduce((sum, [mm3, centre]) => sum + mm3 * centre[axis]!, 0);
    near(`centre along axis ${axis}`, found, moment / volume, CENTRE_MM);
  });
  expect(field.removedMm3.length).toBe(removed.length);
  removed.forEach((mm3, i) => near(`taken by ${body.voids[i]!.id}`, field.removedMm3[i]! / mm3, 1, REMOVED));
  const taken = field.removedMm3.reduce((sum, mm3) => sum + mm3, 0);
  near('shaped less taken', (field.shapedMm3 - taken) / field.volumeMm3, 1, 1e-9);
  for (const [x, y, ...layers] of spots) {
    const found = layersAt(body, x, y).map(({ lowMm, highMm }) => highMm - lowMm);
    expect(found.length, `layers at ${x}, ${y}`).toBe(layers.length);
    layers.forEach((mm, i) => near(`layer ${i} at ${x}, ${y}`, found[i]!, mm, THICKNESS_MM));
    near(
      `least at ${x}, ${y}`,
      cellAt(field, x, y),
      Math.min(...layers, layers.length === 0 ? 0 : Infinity),
      THICKNESS_MM,
    );
  }
}

/** A block about (x, y) that is no whole number of cells. */
const block = { outline: box(-160.3, -210.2, 170.1, 230.7), x: 4.9, y: 10.25, width: 330.4, length: 440.9 };
const blockArea = block.width * block.length;
const H = 45.2;
const roundedArea = (width: number, length: number, r: number) => width * length - (4 - Math.PI) * r * r;

describe('faces', () => {
  it('block', () => {
    expectTruth({
      body: solid({ outline: block.outline, heightMm: H }),
      parts: [prism(blockArea, 0, H, block.x, block.y)],
      spots: [
        [0.5, 0.5, H],
        [-159.5, -209.5, H],
      ],
    });
  });

  it('cylinder', () => {
    expectTruth({
      body: solid({ outline: circle(150.3, 7.7, -3.2), heightMm: H }),
      parts: [prism(Math.PI * 150.3 ** 2, 0, H, 7.7, -3.2)],
    });
  });

  it('wedge: a plane over all of a block, at any angle', () => {
    const slope = 0.07;
    for (const [nx, ny, x, y] of [
      [1, 0, -160.3, 0],
      [0, -1, 0, 230.7],
      [0.6, 0.8, -160.3, -210.2],
    ] as const) {
      const plane = { kind: 'plane', slope, xMm: x, yMm: y, towardX: nx, towardY: ny } as const;
      // Thickness t is t₀ at the middle and falls by the slope. ∫ x t = A x̄ t₀ − s·n·I, ∫ t² = A t₀² + s²(nx² I₁ + ny² I₂).
      const t0 = H - slope * ((block.x - x) * nx + (block.y - y) * ny);
      const [ix, iy] = [(blockArea * block.width ** 2) / 12, (blockArea * block.length ** 2) / 12];
      const volume = blockArea * t0;
      const square = blockArea * t0 ** 2 + slope ** 2 * (nx ** 2 * ix + ny ** 2 * iy);
      const centre = [block.x - (slope * nx * ix) / volume, block.y - (slope * ny * iy) / volume] as const;
      expectTruth({
        body: solid({ outline: block.outline, heightMm: H, top: face(block.outline, { contours: [plane] }) }),
        parts: [[volume, [...centre, square / 2 / volume]]],
        spots: [[30.5, -20.5, H - slope * ((30.5 - x) * nx + (-20.5 - y) * ny)]],
      });
    }
  });

  it('a plane that runs out through the back leaves nothing there, and no less', () => {
    // Reaches the back 90.4 mm from its line.
    const plane = { kind: 'plane', slope: 0.5, xMm: 0, yMm: 0, towardX: 1, towardY: 0 } as const;
    const wedge = (90.4 * block.length * H) / 2;
    expectTruth({
      body: solid({ outline: block.outline, heightMm: H, top: face(block.outline, { contours: [plane] }) }),
      parts: [prism(160.3 * block.length, 0, H, -80.15, block.y), [wedge, [90.4 / 3, block.y, H / 3]]],
      spots: [
        [120.5, 0.5],
        [50.5, 0.5, H - 25.25],
      ],
    });
  });

  it('bevel on a circle: a frustum on a disc', () => {
    const [r, land, width, rise] = [160.4, 9.3, 31.7, 6.5];
    const outline = circle(r);
    const [b, a] = [r - land, r - land - width];
    const frustum = (Math.PI * rise * (a * a + a * b + b * b)) / 3;
    // Centre of a frustum above its base b: h/4 · (b² + 2ab + 3a²) / (b² + ab + a²).
    const up = (rise / 4) * ((b * b + 2 * a * b + 3 * a * a) / (b * b + a * b + a * a));
    expectTruth({
      body: solid({ outline, heightMm: H, top: carved(outline, rise, bevel(land, width)) }),
      parts: [prism(Math.PI * r * r, 0, H - rise), [frustum, [0, 0, H - rise + up]]],
      spots: [
        [0.5, 0.5, H],
        [155.5, 0.5, H - rise],
        [130.5, 0.5, H - (rise * (Math.hypot(130.5, 0.5) - a)) / width],
      ],
    });
  });

  it('quarter round along both edges of a circle', () => {
    const [R, r] = [140.2, 6.3];
    const outline = circle(R);
    const spandrel = (1 - Math.PI / 4) * r * r;
    const from = ((10 - 3 * Math.PI) / (12 - 3 * Math.PI)) * r;
    const ring = 2 * Math.PI * (R - from) * spandrel;
    const rounding = { roundMm: r };
    const d = R - Math.hypot(137.5, 0.5);
    const drop = r - Math.sqrt(r * r - (r - d) ** 2);
    expectTruth({
      body: solid({ outline, heightMm: H, top: face(outline, rounding), back: face(outline, rounding) }),
      parts: [prism(Math.PI * R * R, 0, H), [-ring, [0, 0, H - from]], [-ring, [0, 0, from]]],
      spots: [
        [0.5, 0.5, H],
        [137.5, 0.5, H - 2 * drop],
      ],
    });
    // What the rounding takes is small beside the body, so it is asked for by itself.
    const one = fieldOf(solid({ outline, heightMm: H, top: face(outline, rounding) }));
    near('quarter round', (Math.PI * R * R * H - one.volumeMm3) / ring, 1, 0.03);
  });

  it('ledge for a binding on a circle', () => {
    const [R, width, depth] = [150.6, 2.4, 7.1];
    const outline = circle(R);
    const ring = Math.PI * (R * R - (R - width) ** 2);
    const ledge = { widthMm: width, depthMm: depth };
    const body = solid({ outline, heightMm: H, top: face(outline, { ledge }) });
    expectTruth({
      body,
      parts: [prism(Math.PI * R * R, 0, H), less(prism(ring, H - depth, H))],
      spots: [
        [149.5, 0.5, H - depth],
        [146.5, 0.5, H],
      ],
    });
    near('ledge', (Math.PI * R * R * H - fieldOf(body).volumeMm3) / (ring * depth), 1, 0.001);
  });

  it('ledge on a block whose sides run along the cells', () => {
    const outline = box(-160, -200, 160, 220);
    for (const width of [1.4, 1.5, 1.6, 2.45]) {
      const body = solid({ outline, heightMm: H, back: face(outline, { ledge: { widthMm: width, depthMm: 7.1 } }) });
      const ring = 320 * 420 - (320 - 2 * width) * (420 - 2 * width);
      near('ledge', (320 * 420 * H - fieldOf(body).volumeMm3) / (ring * 7.1), 1, 1e-6);
    }
  });

  it('dish across a block: a prism over a segment of a circle', () => {
    const [width, depth] = [90.7, 8.2];
    const radius = ((width / 2) ** 2 + depth ** 2) / (2 * depth);
    const chordUp = radius - depth;
    const segment = radius ** 2 * Math.acos(chordUp / radius) - chordUp * Math.sqrt(2 * radius * depth - depth * depth);
    // Centre of a segment from the circle's: chord³ / 12 A.
    const from = width ** 3 / 12 / segment - chordUp;
    const contour = {
      kind: 'dish',
      widthMm: width,
      depthMm: depth,
      xMm: 20.2,
      yMm: 0,
      towardX: -1,
      towardY: 0,
    } as const;
    const middle = 20.2 - width / 2;
    expectTruth({
      body: solid({ outline: block.outline, heightMm: H, back: face(block.outline, { contours: [contour] }) }),
      parts: [prism(blockArea, 0, H, block.x, block.y), [-segment * block.length, [middle, block.y, from]]],
      spots: [
        [21.5, 0.5, H],
        [-71.5, 0.5, H],
        [-24.5, 0.5, H - (Math.sqrt(radius ** 2 - (-24.5 - middle) ** 2) - chordUp)],
      ],
    });
  });
});

describe('pockets', () => {
  const whole = prism(blockArea, 0, H, block.x, block.y);
  const area = roundedArea(60.4, 80.6, 6.2);

  it('on both faces of a rounded rectangle, one floor sloping', () => {
    const outline = rounded(330.6, 420.2, 60.3, 3.3, 2.2);
    const plan = rounded(60.4, 80.6, 6.2, -70.3, 100.2);
    const floor = { zMm: 28.1, slope: 0.05, yMm: 59.9 };
    const mean = 28.1 + 0.05 * (100.2 - 59.9);
    // Second moment of the rounded rectangle about its middle, along its length (parallel axes on four quarter circles).
    const [c, r] = [80.6 / 2 - 6.2, 6.2];
    const quarter = Math.PI / 16 - 4 / (9 * Math.PI);
    const corners = 4 * (quarter * r ** 4 + (Math.PI / 4) * r * r * (c + (4 * r) / (3 * Math.PI)) ** 2);
    const second = ((60.4 - 2 * r) * 80.6 ** 3) / 12 + (2 * r * (2 * c) ** 3) / 12 + corners;
    const deep = area * (H - mean);
    const spread = 0.05 * second;
    const slopingPart: Part = [
      -deep,
      [-70.3, 100.2 - spread / deep, (area * (H * H - mean * mean) - 0.05 ** 2 * second) / 2 / deep],
    ];
    const backPart = prism(area, 0, 12.4, 80.1, -60.7);
    expectTruth({
      body: solid({
        outline,
        heightMm: H,
        voids: [
          pocket('neck', plan, 'top', floor),
          pocket('jack', rounded(60.4, 80.6, 6.2, 80.1, -60.7), 'back', 12.4),
        ],
      }),
      parts: [prism(roundedArea(330.6, 420.2, 60.3), 0, H, 3.3, 2.2), slopingPart, less(backPart)],
      removed: [deep, backPart[0]],
      spots: [
        [-70.5, 90.5, 28.1 + 0.05 * (90.5 - 59.9)],
        [80.5, -60.5, H - 12.4],
      ],
    });
  });

  it('chambers at the glue face, closed by the cap, and a pocket that opens one', () => {
    const [one, other] = [prism(Math.PI * 40.3 ** 2, 12.2, 30.1, -80.4, 20.3), prism(area, 18.3, 30.1, 60.2, 30.9)];
    // Straight above the second, down to inside it, over part of its length: takes the cap and some of the chamber's air.
    const lid = 30.3 * 40.1;
    const cap = prism(lid, 30.1, H, 60.2, 30.9);
    expectTruth({
      body: solid({
        outline: block.outline,
        heightMm: H,
        voids: [
          chamber('round', circle(40.3, -80.4, 20.3), 12.2, 30.1),
          chamber('square', rounded(60.4, 80.6, 6.2, 60.2, 30.9), 18.3, 30.1),
          pocket('lid', rounded(30.3, 40.1, 0, 60.2, 30.9), 'top', 25),
        ],
      }),
      parts: [whole, less(one), less(other), less(cap)],
      removed: [one[0], other[0], cap[0]],
      spots: [
        [-80.5, 20.5, 12.2, H - 30.1],
        [60.5, 60.5, 18.3, H - 30.1],
        [60.5, 30.5, 18.3],
      ],
    });
  });

  it('a deeper cavity in a cover seat, whichever is cut first', () => {
    const [seat, cavity] = [rounded(94.3, 78.1, 8.2, 60.2, -70.7), rounded(78.4, 62.7, 6.3, 60.2, -70.7)];
    const [seatArea, cavityArea] = [roundedArea(94.3, 78.1, 8.2), roundedArea(78.4, 62.7, 6.3)];
    const voids = [pocket('seat', seat, 'back', 2.4), pocket('cavity', cavity, 'back', 38.6)];
    const parts = [whole, less(prism(seatArea, 0, 2.4, 60.2, -70.7)), less(prism(cavityArea, 2.4, 38.6, 60.2, -70.7))];
    const spots = [
      [60.5, -70.5, H - 38.6],
      [103.5, -70.5, H - 2.4],
    ] as const;
    const body = { outline: block.outline, heightMm: H };
    expectTruth({
      body: solid({ ...body, voids }),
      parts,
      removed: [seatArea * 2.4, cavityArea * 36.2],
      spots,
    });
    expectTruth({
      body: solid({ ...body, voids: voids.toReversed() }),
      parts,
      removed: [cavityArea * 38.6, (seatArea - cavityArea) * 2.4],
      spots,
    });
  });

  it('opposing pockets, and one right through', () => {
    const through = rounded(40.2, 30.6, 5, -90.3, -100.8);
    const throughArea = roundedArea(40.2, 30.6, 5);
    const plan = rounded(60.4, 80.6, 6.2, 40.7, 60.3);
    expectTruth({
      body: solid({
        outline: block.outline,
        heightMm: H,
        voids: [
          pocket('above', plan, 'top', 24.7),
          pocket('below', plan, 'back', 20.2),
          pocket('through', through, 'top', -1),
        ],
      }),
      parts: [
        whole,
        less(prism(area, 24.7, H, 40.7, 60.3)),
        less(prism(area, 0, 20.2, 40.7, 60.3)),
        less(prism(throughArea, 0, H, -90.3, -100.8)),
      ],
      removed: [area * (H - 24.7), area * 20.2, throughArea * H],
      spots: [
        [40.5, 60.5, 4.5],
        [-90.5, -100.5],
      ],
    });
  });

  it('over a land that lies lower than its floor: takes nothing there', () => {
    const [r, land, width, rise] = [160.4, 30.3, 20.2, 6.5];
    const outline = circle(r);
    const top = carved(outline, rise, bevel(land, width));
    // From the flat middle out over the land and beyond the side.
    const plan = box(-20.2, 90.3, 30.1, 200);
    const cut = (floor: number) => solid({ outline, heightMm: H, top, voids: [pocket('cut', plan, 'top', floor)] });
    const layer = (highMm: number, over: string) => [{ lowMm: 0, highMm, under: 'back', over }];
    expect(layersAt(cut(H - 3), 0.5, 140.5)).toEqual(layer(H - rise, 'top'));
    expect(cellAt(fieldOf(cut(H - 3)), 0.5, 140.5)).toBeCloseTo(H - rise, 9);
    expect(layersAt(cut(H - 3), 0.5, 95.5)).toEqual(layer(H - 3, 'cut'));
    expect(layersAt(cut(H - 7), 0.5, 140.5)).toEqual(layer(H - 7, 'cut'));
  });

  it('says what bounds the thinnest layer, in the cells of an edge too', () => {
    const plan = box(-30.4, -30.4, 30.6, 30.6);
    const body = solid({
      outline: block.outline,
      heightMm: H,
      voids: [
        pocket('above', plan, 'top', 24.7),
        pocket('below', plan, 'back', 20.2),
        chamber('chamber', box(50.4, -30.4, 90.6, 30.6), 12.1, 33.3),
        pocket('through', box(-90.4, -30.4, -50.4, 30.6), 'back', 99),
      ],
    });
    const field = fieldOf(body);
    const bounding = (x: number, y: number) => {
      const cell = (Math.floor(y) - field.grid.j0) * field.grid.cols + Math.floor(x) - field.grid.i0;
      return [field.under[cell], field.over[cell]];
    };
    expect(bounding(0.5, 0.5)).toEqual([1, 0]);
    expect(bounding(70.5, 0.5)).toEqual([2, FACE]);
    expect(bounding(150.5, 0.5)).toEqual([FACE, FACE]);
    // The edge runs through these cells: never more wood than there is anywhere in one.
    near('on the edge of the pockets', cellAt(field, 30.5, 0.5), 4.5, 1e-9);
    expect(bounding(30.5, 0.5)).toEqual([1, 0]);
    near('on the edge of the chamber', cellAt(field, 50.5, 0.5), H - 33.3, 1e-9);
    expect(bounding(50.5, 0.5)).toEqual([2, FACE]);
    expect(cellAt(field, -50.5, 0.5)).toBe(0);
    expect(cellAt(field, -49.5, 0.5)).toBe(H);
    expect(layersAt(body, 70.5, 0.5)).toEqual([
      { lowMm: 0, highMm: 12.1, under: 'back', over: 'chamber' },
      { lowMm: 33.3, highMm: H, under: 'chamber', over: 'top' },
    ]);
  });

  it('with an island, and one that runs out of the side', () => {
    const outer = rounded(90.4, 90.4, 0, -60.2, 50.3);
    const island = rounded(30.6, 20.2, 0, -60.2, 50.3).slice();
    const hole = Float64Array.from({ length: island.length }, (_, i) => island[island.length - 2 - i + 2 * (i % 2)]!);
    const ring = 90.4 ** 2 - 30.6 * 20.2;
    // 40 wide, from 30.4 inside the neck end to far outside.
    const neck = prism(40 * 30.4, 30.2, H, 10.3, 230.7 - 15.2);
    expectTruth({
      body: solid({
        outline: block.outline,
        heightMm: H,
        voids: [pocket('ring', [outer, hole], 'top', 20.3), pocket('neck', box(-9.7, 200.3, 30.3, 300), 'top', 30.2)],
      }),
      parts: [
        whole,
        less(prism(90.4 ** 2, 20.3, H, -60.2, 50.3)),
        prism(30.6 * 20.2, 20.3, H, -60.2, 50.3),
        less(neck),
      ],
      removed: [ring * (H - 20.3), neck[0]],
      spots: [
        [-60.5, 50.5, H],
        [-60.5, 75.5, 20.3],
        [10.5, 220.5, 30.2],
      ],
    });
  });
});

describe('tubes', () => {
  const whole = prism(blockArea, 0, H, block.x, block.y);

  it('level, dipping, upright: πr²·L', () => {
    const [thin, bore, dipping, upright] = [
      tube('thin', [-100.3, 20.2, 20.1], [60.4, 20.2, 20.1], 1.5),
      tube('bore', [170.1, -60.3, 22.4], [90.5, -110.7, 22.4], 4.2),
      tube('dipping', [-120.2, -150.4, 35.3], [-60.6, -40.9, 10.2], 3.3),
      tube('upright', [100.3, 150.2, 5.1], [100.3, 150.2, 40.4], 6.1),
    ];
    const long = (of: typeof thin) =>
      Math.hypot(of.to.xMm - of.from.xMm, of.to.yMm - of.from.yMm, of.to.zMm - of.from.zMm);
    const bar = (of: typeof thin): Part => [
      Math.PI * of.radiusMm ** 2 * long(of),
      [(of.from.xMm + of.to.xMm) / 2, (of.from.yMm + of.to.yMm) / 2, (of.from.zMm + of.to.zMm) / 2],
    ];
    const parts = [thin, bore, dipping, upright].map(bar);
    expectTruth({
      body: solid({ outline: block.outline, heightMm: H, voids: [thin, bore, dipping, upright] }),
      parts: [whole, ...parts.map(less)],
      removed: [parts[0]![0], parts[1]![0] - outside(4.2, 50.4 / 79.6), parts[2]![0], parts[3]![0]],
      spots: [[100.5, 150.5, 5.1, H - 40.4]],
    });
  });

  /** Of a bore that starts square to its axis on a side it meets at a slant: what lies outside is an ungula, 2/3 · r³ · tan. */
  const outside = (r: number, tan: number) => (2 / 3) * r ** 3 * tan;

  it('two that cross share 16 r³/3', () => {
    const r = 5.3;
    const [one, other] = [
      tube('one', [-60.2, 10.4, 21.3], [59.8, 10.4, 21.3], r),
      tube('other', [3.6, -49.7, 21.3], [3.6, 70.3, 21.3], r),
    ];
    const bar = Math.PI * r * r * 120;
    expectTruth({
      body: solid({ outline: block.outline, heightMm: H, voids: [one, other] }),
      parts: [whole, [-bar, [-0.2, 10.4, 21.3]], [-bar, [3.6, 10.3, 21.3]], [(16 * r ** 3) / 3, [3.6, 10.4, 21.3]]],
      removed: [bar, bar - (16 * r ** 3) / 3],
    });
  });

  it('from one cavity into another', () => {
    const [r, depth] = [3.1, 38.6];
    const size = [30.2, 30.2, 0] as const;
    const pit = (x: number, id: string) => pocket(id, rounded(...size, x, 0.3), 'back', depth);
    // Starts and ends inside the pits, 40.5 mm of it through wood.
    const wood = Math.PI * r * r * 40.5;
    expectTruth({
      body: solid({
        outline: block.outline,
        heightMm: H,
        voids: [pit(-35.35, 'left'), pit(35.35, 'right'), tube('between', [-30, 0.3, 20.2], [30, 0.3, 20.2], r)],
      }),
      parts: [
        whole,
        less(prism(30.2 ** 2, 0, depth, -35.35, 0.3)),
        less(prism(30.2 ** 2, 0, depth, 35.35, 0.3)),
        [-wood, [0, 0.3, 20.2]],
      ],
      removed: [30.2 ** 2 * depth, 30.2 ** 2 * depth, wood],
    });
  });
});
