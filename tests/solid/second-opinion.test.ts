/**
 * Whole bodies, against an independent general-purpose solid kernel (manifold-3d: booleans of triangle meshes).
 *
 * The meshes are made from formulas, not from the height field: surfaces between lines at known distances from the edge
 * (level-lines.ts), pockets as cut-off prisms, tubes as many-sided bars, contours as planes and rollers. They are then cut
 * by the other kernel, and plumb lines through its triangles say how thick the wood is.
 */
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { bounds } from '../../src/geometry/measure.ts';
import { contains, regionContains } from '../../src/geometry/nearness.ts';
import type { Polygon } from '../../src/geometry/polygon.ts';
import { forEachEdge } from '../../src/geometry/polygon.ts';
import { layersAt, spanAt } from '../../src/geometry/solid/column.ts';
import { fieldOf } from '../../src/geometry/solid/field.ts';
import type { Pocket, Solid, Void } from '../../src/geometry/solid/solid.ts';
import { floorAt } from '../../src/geometry/solid/solid.ts';
import { FAR_MM, leftBetween, leftToFace } from '../../src/geometry/solid/wood-left.ts';
import { ARCH, ARCH_RISE_MM, archDown, BEVEL, BEVEL_RISE_MM, bevelDown, byEveryEdge, roundDown } from './by-hand.ts';
import { carved, cellAt, centreOf, chamber, circle, face, near, pocket, rounded, shape, solid, tube } from './make.ts';
import type { Kernel, Manifold, Plumb } from './mesh.ts';
import { bodyMesh, LEVEL, massOf, plumbLines, roller, roundEnded, startKernel, voidMesh } from './mesh.ts';
import { body, horned } from './outlines.ts';

let kernel: Kernel;
beforeAll(async () => {
  kernel = await startKernel();
});

/** Shares of the body's and of a void's volume; mm. */
const VOLUME = 1e-3;
const REMOVED = 5e-3;
const CENTRE_MM = 0.05;
const THICKNESS_MM = 0.05;

interface Case {
  readonly name: string;
  readonly whole: Solid;
  /** The same body without its voids. */
  readonly mesh: (kernel: Kernel) => Manifold;
}

const range = (from: number, to: number, step: number): readonly number[] =>
  Array.from({ length: Math.round((to - from) / step) + 1 }, (_, i) => from + i * step);

const H = 49.3;
const controls = pocket('controls', rounded(78, 62, 6, 92, -66, 7), 'back', 39.1);
const seat = pocket('seat', rounded(94, 78, 8, 92, -66, 7), 'back', 2.4);
const neck = pocket('neck', rounded(56.2, 76, 6, 0.3, 190), 'top', { zMm: 33.2, slope: 0.035, yMm: 152 });
const pickup = pocket('pickup', rounded(88.1, 38.3, 4, 0.2, 32.4), 'top', 29.2);

/** Close to the edge a quarter round is steep: lines run there every few hundredths. */
const rounding = (radiusMm: number) => range(1, 12, 1).map((k) => radiusMm * (1 - Math.cos((k * Math.PI) / 24)));

const ARCH_LINES = [...range(11, 17, 0.75), ...range(18, 45, 1)];

const plane = { kind: 'plane', slope: 0.11, xMm: -80, yMm: -60, towardX: -0.8, towardY: -0.6 } as const;
const dish = { kind: 'dish', widthMm: 95, depthMm: 11, xMm: -60, yMm: 110, towardX: -0.6, towardY: 0.8 } as const;

const cases: readonly Case[] = [
  {
    name: 'arched with a recurve, and a ledge for a binding',
    whole: solid({
      outline: body,
      heightMm: H,
      top: carved(body, ARCH_RISE_MM, ARCH, { ledge: { widthMm: 2.2, depthMm: 6.1 } }),
      voids: [neck, pickup, seat, controls, tube('jack', [158, -100.2, 20.2], [112, -75.3, 20.2], 6.2)],
    }),
    // The ledge ends in a slope a thousandth wide.
    mesh: (kernel) => {
      const down = (d: number) => (d < 2.2 ? ARCH_RISE_MM + 6.1 : archDown(d));
      return bodyMesh(kernel, body, H, { down, at: [2.1995, 2.2005, ...ARCH_LINES] }, LEVEL);
    },
  },
  {
    name: 'bevelled, with a round-over on both faces',
    whole: solid({
      outline: body,
      heightMm: H,
      top: carved(body, BEVEL_RISE_MM, BEVEL, { roundMm: 3.2 }),
      back: face(body, { roundMm: 4.5 }),
      voids: [pickup, controls, seat, pocket('through', rounded(50, 12, 3, 0, -40), 'top', -1)],
    }),
    mesh: (kernel) => {
      const down = (d: number) => bevelDown(d) + roundDown(3.2, d);
      const lines = [...rounding(3.2), 6.04, 9, 12, 15, 18, 21, 24.09];
      return bodyMesh(kernel, body, H, { down, at: lines }, { down: (d) => roundDown(4.5, d), at: rounding(4.5) });
    },
  },
  {
    name: 'flat, with chambers and tubes',
    whole: solid({
      outline: horned,
      heightMm: 45.2,
      voids: [
        chamber('round', circle(36.3, -88.2, 20.7), 8.1, 33.3),
        chamber('long', rounded(50, 90, 9, -75.2, -95.7, 20), { zMm: 9.3, slope: -0.03, yMm: -95.7 }, 33.3),
        pocket('pickup', rounded(88.1, 38.3, 4, 20.2, 52.4), 'top', 25.2),
        controls,
        tube('between', [-82, -60, 20.3], [-87, 0, 22.1], 5.2),
        tube('lead', [60.2, -60.3, 30.2], [30.1, 51.4, 27.1], 3.1),
        tube('jack', [175, -110, 20.2], [112, -75.3, 14.8], 6.2),
        tube('stud', [-20, -20, 12], [-20, -20, 60], 5.5),
      ],
    }),
    mesh: (kernel) => bodyMesh(kernel, horned, 45.2, LEVEL, LEVEL),
  },
  {
    name: 'a contour on each face',
    whole: solid({
      outline: horned,
      heightMm: 44.4,
      top: face(horned, { contours: [plane] }),
      back: face(horned, { contours: [dish] }),
      voids: [neck, pocket('island', rounded(60, 80, 5, -70, -70), 'back', 22.3), pickup],
    }),
    mesh: (kernel) => {
      const { slope, xMm, yMm, towardX, towardY } = plane;
      const radius = ((dish.widthMm / 2) ** 2 + dish.depthMm ** 2) / (2 * dish.depthMm);
      const middle = dish.widthMm / 2;
      return bodyMesh(kernel, horned, 44.4, LEVEL, LEVEL)
        .trimByPlane(
          [-slope * towardX, -slope * towardY, -1],
          (-44.4 - slope * (xMm * towardX + yMm * towardY)) / Math.hypot(1, slope),
        )
        .subtract(
          roller(
            kernel,
            [dish.xMm + middle * dish.towardX, dish.yMm + middle * dish.towardY, dish.depthMm - radius],
            (Math.atan2(dish.towardX, -dish.towardY) * 180) / Math.PI,
            radius,
          ),
        );
    },
  },
  {
    name: 'arched over a sharp bay and a horn',
    whole: solid({
      outline: horned,
      heightMm: H,
      top: carved(horned, ARCH_RISE_MM, ARCH),
      voids: [pocket('deep', rounded(60, 120, 8, -95, -60), 'back', 40.2), pickup],
    }),
    mesh: (kernel) => bodyMesh(kernel, horned, H, { down: archDown, at: ARCH_LINES }, LEVEL),
  },
];

/** Halton's sequence: points spread evenly, the same in every run. */
function spots(count: number, outline: Polygon): readonly (readonly [x: number, y: number])[] {
  const { minX, minY, maxX, maxY } = bounds(outline)!;
  const digit = (i: number, base: number): number => {
    let [value, part] = [0, 1 / base];
    for (let k = i; k > 0; k = Math.floor(k / base), part /= base) value += (k % base) * part;
    return value;
  };
  return Array.from({ length: count }, (_, i) => {
    return [minX + (maxX - minX) * digit(i + 1, 2), minY + (maxY - minY) * digit(i + 1, 3)] as const;
  });
}

/**
 * On a ridge, half-way between two parts of the edge, the mesh is flat from one line to the next: 1 mm, and a third of that in
 * height. Distance grows there by less than 1 in 1. What the field says of ridges is proved in arch.test.ts.
 */
function onRidge(outline: Polygon, x: number, y: number): boolean {
  const h = 1.5;
  const rise = (dx: number, dy: number) =>
    (byEveryEdge(outline, true, x + dx, y + dy) - byEveryEdge(outline, true, x - dx, y - dy)) / (2 * h);
  return Math.hypot(rise(h, 0), rise(0, h)) < 0.98;
}

/** Nearer than this to a wall the two may differ by as much as it is high, mm. */
const WALL_MM = 0.02;

/** A place where no wall and no ridge is nearer than that. */
function isClear({ outline, top, voids }: Solid, x: number, y: number, wallMm: number): boolean {
  if (!contains(outline, x, y)) return false;
  const edge = byEveryEdge(outline, true, x, y);
  if (edge < wallMm || (top.ledge && Math.abs(edge - top.ledge.widthMm) < wallMm)) return false;
  if (top.riseMm > 0 && onRidge(outline, x, y)) return false;
  return voids.every((cut) => !besideAWall(cut, x, y, wallMm));
}

function besideAWall(cut: Void, x: number, y: number, wallMm: number): boolean {
  if (cut.kind === 'pocket') return cut.region.some((ring) => byEveryEdge(ring, true, x, y) < wallMm);
  const [dx, dy, dz] = [cut.to.xMm - cut.from.xMm, cut.to.yMm - cut.from.yMm, cut.to.zMm - cut.from.zMm];
  const [px, py] = [x - cut.from.xMm, y - cut.from.yMm];
  const flat = Math.hypot(dx, dy);
  if (flat === 0) return Math.abs(Math.hypot(px, py) - cut.radiusMm) < wallMm;
  const [across, along] = [Math.abs(px * dy - py * dx) / flat, (px * dx + py * dy) / flat];
  // Its flat ends lean where it dips.
  const lean = (cut.radiusMm * Math.abs(dz)) / Math.hypot(flat, dz) + wallMm;
  if (along < -lean || along > flat + lean || across > cut.radiusMm + wallMm) return false;
  return along < lean || along > flat - lean || across > cut.radiusMm - wallMm;
}

describe.each(cases)('$name', ({ whole, mesh }) => {
  const field = fieldOf(whole);
  const removed: number[] = [];
  let uncut: Manifold;
  let cut: Manifold;
  let met: Plumb;
  let metUncut: Plumb;

  beforeAll(() => {
    uncut = mesh(kernel);
    cut = uncut;
    for (const part of whole.voids) {
      const after = cut.subtract(voidMesh(kernel, part));
      removed.push(cut.volume() - after.volume());
      cut = after;
    }
    [met, metUncut] = [plumbLines(cut), plumbLines(uncut)];
  });

  it('has the same volume and centre, and each void takes the same', () => {
    const { mm3, centre } = massOf(cut);
    near('shaped', field.shapedMm3 / uncut.volume(), 1, VOLUME);
    near('volume', field.volumeMm3 / mm3, 1, VOLUME);
    centreOf(field).forEach((found, axis) => near(`centre along axis ${axis}`, found, centre[axis]!, CENTRE_MM));
    removed.forEach((taken, i) => near(`taken by ${whole.voids[i]!.id}`, field.removedMm3[i]! / taken, 1, REMOVED));
  });

  it('has the same layers under a plumb line anywhere', () => {
    let looked = 0;
    for (const [x, y] of spots(4000, whole.outline)) {
      if (!isClear(whole, x, y, WALL_MM)) continue;
      const ours = layersAt(whole, x, y).flatMap(({ lowMm, highMm }) => [lowMm, highMm]);
      const theirs = met(x, y);
      expect(theirs.length, `surfaces at ${x}, ${y}: ${theirs.join(', ')}; ${ours.join(', ')}`).toBe(ours.length);
      near('surface', Math.max(0, ...ours.map((z, i) => Math.abs(z - theirs[i]!))), 0, THICKNESS_MM);
      looked++;
    }
    expect(looked).toBeGreaterThan(2400);
  });

  it('is as thin over each cell as a plumb line through its middle says', () => {
    let looked = 0;
    for (const [x, y] of spots(2400, whole.outline)) {
      const [middleX, middleY] = [Math.floor(x) + 0.5, Math.floor(y) + 0.5];
      // No wall in the cell, and none of the steep part of a rounding. Where there is a bar the cell has the least of all of it.
      if (!isClear(whole, middleX, middleY, 1) || byEveryEdge(whole.outline, true, middleX, middleY) < 5) continue;
      if (whole.voids.some((one) => one.kind === 'tube' && spanAt(one, middleX, middleY))) continue;
      const surfaces = met(middleX, middleY);
      const layers = surfaces.flatMap((z, i) => (i % 2 === 1 ? [z - surfaces[i - 1]!] : []));
      near('least', cellAt(field, middleX, middleY), layers.length === 0 ? 0 : Math.min(...layers), THICKNESS_MM);
      looked++;
    }
    expect(looked).toBeGreaterThan(1200);
  });

  it('has the same least wood over and under each pocket', () => {
    for (const one of whole.voids) {
      if (one.kind === 'tube') continue;
      for (const side of ['top', 'back'] as const) {
        const left = leftToFace(whole, one, side);
        if (left) near(`${one.id} to the ${side}`, left.mm, leastByPlumb(one, side, metUncut), THICKNESS_MM);
      }
    }
  });
});

describe('between two voids', () => {
  /** Nothing is asked of walls much thicker than this. */
  const SEARCH_MM = FAR_MM + 1;

  /** Pockets and bars of all kinds close together, the same in every run. */
  const some = fc.tuple(
    fc.constantFrom('top', 'back', 'glue-face', 'bar', 'bar'),
    fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 8, maxLength: 8 }),
  );
  function made(kind: string, [a, b, c, d, e, f, g, h]: readonly number[]): Void {
    const [x, y] = [80 * a! - 40, 80 * b! - 40];
    if (kind === 'bar') return tube('bar', [x, y, 10 + 25 * c!], [x + 60 * d! - 30, y + 35, 10 + 25 * e!], 2 + 4 * f!);
    const size = { kind: 'rectangle', widthMm: 15 + 30 * d!, lengthMm: 15 + 30 * e!, cornerMm: 4 + f! } as const;
    const plan = shape(size, x, y, 180 * g!, 0.01);
    const floor = { zMm: 10 + 15 * c!, slope: 0.1 * h! - 0.05, yMm: y };
    return kind === 'glue-face' ? chamber(kind, plan, floor, 32) : pocket(kind, plan, kind as 'top' | 'back', floor);
  }

  it('leaves the same wood', () => {
    let walls = 0;
    fc.assert(
      fc.property(some, some, ([kind, sizes], [otherKind, otherSizes]) => {
        const [one, other] = [made(kind, sizes), made(otherKind, otherSizes)];
        // Here a bar has round ends, as it has for what is left.
        const [a, b] = [solidOf(one), solidOf(other)];
        const gap = a.minGap(b, SEARCH_MM);
        a.delete();
        b.delete();
        const left = leftBetween(one, other);
        if (left === undefined) expect(gap).toBeGreaterThan(FAR_MM);
        else near('wood', Math.min(SEARCH_MM, Math.max(0, left.mm)), gap, THICKNESS_MM);
        if (gap > 0) walls++;
      }),
      { seed: 20260303, numRuns: 250 },
    );
    expect(walls).toBeGreaterThan(70);
  });

  const solidOf = (cut: Void): Manifold => (cut.kind === 'tube' ? roundEnded(kernel, cut) : voidMesh(kernel, cut));
});

/** Looked for at plumb lines every 0.5 mm over the pocket, and along its edge a hair inside, in the body as shaped. */
function leastByPlumb({ region, opens, floor, roofMm }: Pocket, side: 'top' | 'back', met: Plumb): number {
  let least = Infinity;
  const look = (x: number, y: number): void => {
    const surfaces = regionContains(region, x, y) ? met(x, y) : [];
    if (surfaces.length === 0) return;
    const z = side === 'top' && opens === 'glue-face' ? roofMm! : floorAt(floor, y);
    least = Math.min(least, side === 'top' ? surfaces.at(-1)! - z : z - surfaces[0]!);
  };
  for (const ring of region) {
    const { minX, minY, maxX, maxY } = bounds(ring)!;
    for (let y = minY + 0.0123; y < maxY; y += 0.5) for (let x = minX + 0.0171; x < maxX; x += 0.5) look(x, y);
    forEachEdge(ring, (x0, y0, x1, y1) => {
      const length = Math.hypot(x1 - x0, y1 - y0);
      const [ux, uy] = [(x1 - x0) / length, (y1 - y0) / length];
      for (let along = 0; along < length; along += 0.2) {
        look(x0 + along * ux - 1e-3 * uy, y0 + along * uy + 1e-3 * ux);
      }
    });
  }
  return least;
}
