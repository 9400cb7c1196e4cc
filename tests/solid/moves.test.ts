/** A body does not change by being mirrored, moved or turned: figures that hold whatever the formulas are. */
import { describe, expect, it } from 'vitest';
import type { Field } from '../../src/geometry/solid/field.ts';
import { fieldOf } from '../../src/geometry/solid/field.ts';
import { arch, bevel } from '../../src/geometry/solid/profile.ts';
import type { Floor, Solid, Void } from '../../src/geometry/solid/solid.ts';
import { level } from '../../src/geometry/solid/solid.ts';
import type { Left } from '../../src/geometry/solid/wood-left.ts';
import { leftBetween, leftToFace, leftToSide } from '../../src/geometry/solid/wood-left.ts';
import { edgeLine } from '../../src/geometry/solid/edge-line.ts';
import {
  carved,
  chamber,
  circle,
  face,
  mirroring,
  type Move,
  moved,
  movingBy,
  near,
  pocket,
  rounded,
  solid,
  tube,
  turningBy,
} from './make.ts';
import { body, horned } from './outlines.ts';

/** Of the size of what is compared: rounding. */
const SAME = 1e-9;
const VOLUME = 1e-3;
const THICKNESS_MM = 0.02;

function cuts(neckFloor: Floor): readonly Void[] {
  return [
    pocket('neck', rounded(56.2, 76, 6, 0.3, 180), 'top', neckFloor),
    pocket('pickup', rounded(88.1, 38.3, 4, 0.2, 32.4), 'top', 30.2),
    pocket('seat', rounded(94, 78, 8, 92, -66), 'back', 2.4),
    pocket('controls', rounded(78, 62, 6, 92, -66, 7), 'back', 39.1),
    chamber('chamber', circle(36.3, -88.2, 20.7), 12.1, 33.3),
    chamber('other', rounded(50, 70, 9, -75.2, -85.7, 20), 9.3, 33.3),
    tube('lead', [60.2, -60.3, 22.2], [20.1, 31.4, 24.1], 3.1),
    tube('jack', [158, -100.2, 20.2], [112, -75.3, 20.2], 6.2),
  ];
}

function bodies(neckFloor: Floor): readonly (readonly [string, Solid])[] {
  const recurve = arch({ landMm: 11, recurve: { atMm: 17, depthMm: 0.8 }, crownMm: 45 });
  const contours = [
    { kind: 'dish', widthMm: 90, depthMm: 12, xMm: -70.3, yMm: 120.4, towardX: -0.8, towardY: 0.6 },
  ] as const;
  const arched = carved(body, 4.4, recurve, { ledge: { widthMm: 2.1, depthMm: 5.3 } });
  const stretch = { from: edgeLine(horned.slice(20, 120), false), profile: bevel(4, 30) };
  const bevelled = face(horned, { riseMm: 6, carve: stretch, roundMm: 3.2 });
  return [
    [
      'arched',
      solid({ outline: body, heightMm: 49.3, top: arched, back: face(body, { contours }), voids: cuts(neckFloor) }),
    ],
    ['bevelled', solid({ outline: horned, heightMm: 46.1, top: bevelled, voids: cuts(neckFloor) })],
  ];
}

const sloping: Floor = { zMm: 33.2, slope: 0.035, yMm: 142 };

function expectSame(found: Field, other: Field, centre: Move['point'], column: (col: number) => number): void {
  const bulk = other.shapedMm3;
  near('shaped', found.shapedMm3 / bulk, 1, SAME);
  near('volume', found.volumeMm3 / other.volumeMm3, 1, SAME);
  other.removedMm3.forEach((mm3, i) => near(`void ${i}`, found.removedMm3[i]! / mm3, 1, SAME));
  const [mx, my, mz] = other.momentMm4.map((moment) => moment / other.volumeMm3);
  const at = centre({ x: mx!, y: my! });
  [at.x, at.y, mz!].forEach((mm, axis) => {
    near(`centre along axis ${axis}`, found.momentMm4[axis]! / found.volumeMm3, mm, 100 * SAME);
  });

  const { cols, rows } = other.grid;
  expect([found.grid.cols, found.grid.rows]).toEqual([cols, rows]);
  let [worst, others] = [0, 0];
  for (let cell = 0; cell < cols * rows; cell++) {
    const twin = cell - (cell % cols) + column(cell % cols);
    const [a, b] = [found.least[twin]!, other.least[cell]!];
    if (Number.isNaN(a) !== Number.isNaN(b)) others++;
    else if (!Number.isNaN(a)) worst = Math.max(worst, Math.abs(a - b));
    if (found.over[twin] !== other.over[cell] || found.under[twin] !== other.under[cell]) others++;
  }
  near('least', worst, 0, 50 * SAME);
  // Nowhere is something else the nearest.
  expect(others).toBe(0);
}

describe.each(bodies(sloping))('%s', (_, whole) => {
  const field = fieldOf(whole);

  it('mirrored', () => {
    const last = field.grid.cols - 1;
    expectSame(fieldOf(moved(whole, mirroring)), field, mirroring.point, (col) => last - col);
  });

  it.each([
    [37, 0],
    [-250, 113],
    [4000, -3000],
  ])('moved by %d, %d whole cells', (dx, dy) => {
    const move = movingBy(dx, dy);
    const other = fieldOf(moved(whole, move));
    expect([other.grid.i0 - field.grid.i0, other.grid.j0 - field.grid.j0]).toEqual([dx, dy]);
    expectSame(other, field, move.point, (col) => col);
  });
});

/** All the wood that can be asked for, by name. */
function allLeft({ outline, voids, ...rest }: Solid): ReadonlyMap<string, Left> {
  const found = new Map<string, Left>();
  const add = (name: string, left: Left | undefined): void => {
    if (left) found.set(name, left);
  };
  voids.forEach((cut, i) => {
    for (const side of ['top', 'back'] as const)
      add(`${cut.id} ${side}`, leftToFace({ outline, voids, ...rest }, cut, side));
    add(`${cut.id} side`, leftToSide(outline, cut));
    for (const other of voids.slice(i + 1)) add(`${cut.id} ${other.id}`, leftBetween(cut, other));
  });
  return found;
}

describe.each(bodies(level(33.2)))('%s, turned', (_, whole) => {
  const field = fieldOf(whole);
  const left = allLeft(whole);

  it.each([90, 17, 133.7, 231, 359.1])('by %d°', (angle) => {
    const turned = moved(whole, turningBy(angle));
    const other = fieldOf(turned);
    near('shaped', other.shapedMm3 / field.shapedMm3, 1, VOLUME);
    near('volume', other.volumeMm3 / field.volumeMm3, 1, VOLUME);
    other.removedMm3.forEach((mm3, i) => {
      near(`void ${i}`, Math.abs(mm3 - field.removedMm3[i]!) / field.removedMm3[i]!, 0, 5 * VOLUME);
    });
    const found = allLeft(turned);
    // How far apart boxes are turns with them: walls of more than 40 mm may come and go.
    const names = [...left.keys()].filter((name) => found.has(name));
    expect(names.length).toBeGreaterThan(left.size - 4);
    for (const name of names) {
      const [a, b] = [found.get(name)!, left.get(name)!];
      if (b.mm === -Infinity) expect(a.mm, name).toBe(-Infinity);
      else near(name, a.mm, b.mm, THICKNESS_MM);
      near(`${name}: shared`, a.sharedMm2, b.sharedMm2, 0.01);
    }
  });

  it('mirrored: all the same wood', () => {
    const found = allLeft(moved(whole, mirroring));
    expect([...found.keys()]).toEqual([...left.keys()]);
    for (const [name, { mm }] of left) if (mm > -Infinity) near(name, found.get(name)!.mm, mm, THICKNESS_MM);
  });
});
