/** Bodies for the tests of the solid, in as few words as a test can read. All sizes in mm. */
import { expect } from 'vitest';
import { mirror, rotate, translate } from '../../src/geometry/transform.ts';
import type { Point } from '../../src/geometry/axes.ts';
import type { Polygon, Region } from '../../src/geometry/polygon.ts';
import { type Shape, shapePolygon } from '../../src/geometry/shape.ts';
import type { Contour } from '../../src/geometry/solid/contour.ts';
import { edgeLine, type EdgeLine } from '../../src/geometry/solid/edge-line.ts';
import type { Face } from '../../src/geometry/solid/face.ts';
import type { Field } from '../../src/geometry/solid/field.ts';
import { FLAT, type Profile } from '../../src/geometry/solid/profile.ts';
import type { Floor, Pocket, Point3, Solid, Tube, Void } from '../../src/geometry/solid/solid.ts';
import { level } from '../../src/geometry/solid/solid.ts';

/** Chords of round shapes, mm: their areas are then short by less than a hundred-thousandth. */
const CHORD_MM = 1e-4;

export const box = (x0: number, y0: number, x1: number, y1: number): Polygon =>
  Float64Array.of(x0, y0, x1, y0, x1, y1, x0, y1);

export function shape(of: Shape, x = 0, y = 0, angleDeg = 0, chordMm = CHORD_MM): Polygon {
  const made = shapePolygon(of, { xMm: x, yMm: y, angleDeg }, chordMm);
  if (!made.ok) throw new Error(made.what);
  return made.polygon;
}

export const circle = (radiusMm: number, x = 0, y = 0, chordMm = CHORD_MM): Polygon =>
  shape({ kind: 'circle', radiusMm }, x, y, 0, chordMm);

/** `length` along y, `width` along x, as everywhere. */
export const rounded = (widthMm: number, lengthMm: number, cornerMm: number, x = 0, y = 0, angleDeg = 0): Polygon =>
  shape({ kind: 'rectangle', lengthMm, widthMm, cornerMm }, x, y, angleDeg);

/** A level face, but for what is said. */
export function face(outline: Polygon, own: Partial<Face> = {}): Face {
  const edge = edgeLine(outline, true);
  return { riseMm: 0, carve: { from: edge, profile: FLAT }, contours: [], edge, roundMm: 0, ledge: undefined, ...own };
}

/** A face shaped by the distance from all of the outline. */
export const carved = (outline: Polygon, riseMm: number, profile: Profile, own: Partial<Face> = {}): Face =>
  face(outline, { riseMm, carve: { from: edgeLine(outline, true), profile }, ...own });

interface Made {
  readonly outline: Polygon;
  readonly heightMm: number;
  readonly top?: Face;
  readonly back?: Face;
  readonly voids?: readonly Void[];
}

export const solid = ({ outline, heightMm, top, back, voids = [] }: Made): Solid => ({
  outline,
  heightMm,
  top: top ?? face(outline),
  back: back ?? face(outline),
  voids,
});

const regionOf = (plan: Polygon | Region): Region => (plan instanceof Float64Array ? [plan] : plan);
const floorOf = (floor: number | Floor): Floor => (typeof floor === 'number' ? level(floor) : floor);

/** Open to the top or the back, down or up to a floor at that z. */
export const pocket = (id: string, plan: Polygon | Region, opens: 'top' | 'back', floor: number | Floor): Pocket => ({
  kind: 'pocket',
  id,
  region: regionOf(plan),
  opens,
  floor: floorOf(floor),
  roofMm: undefined,
});

/** Cut from the glue face at z = roof and closed by the cap. */
export const chamber = (id: string, plan: Polygon | Region, floor: number | Floor, roofMm: number): Pocket => ({
  kind: 'pocket',
  id,
  region: regionOf(plan),
  opens: 'glue-face',
  floor: floorOf(floor),
  roofMm,
});

export type Triple = readonly [x: number, y: number, z: number];
const point3 = ([xMm, yMm, zMm]: Triple): Point3 => ({ xMm, yMm, zMm });

export const tube = (id: string, from: Triple, to: Triple, radiusMm: number): Tube => ({
  kind: 'tube',
  id,
  from: point3(from),
  to: point3(to),
  radiusMm,
});

/** Passes when `found` lies within `tolerance` of `expected`; says what and by how much otherwise. */
export function near(what: string, found: number, expected: number, tolerance: number): void {
  const off = Math.abs(found - expected);
  expect(off, `${what}: found ${found}, expected ${expected}, off by ${off}`).toBeLessThanOrEqual(tolerance);
}

/** Centre of mass. */
export const centreOf = ({ volumeMm3, momentMm4 }: Field): Triple => [
  momentMm4[0] / volumeMm3,
  momentMm4[1] / volumeMm3,
  momentMm4[2] / volumeMm3,
];

/** Value of the cell over (x, y). */
export function cellAt({ grid, least }: Field, x: number, y: number): number {
  const [col, row] = [Math.floor(x / grid.cellMm) - grid.i0, Math.floor(y / grid.cellMm) - grid.j0];
  return least[row * grid.cols + col]!;
}

/** How a body is moved as a whole: its polygons, its points, its directions. */
export interface Move {
  readonly polygon: (polygon: Polygon) => Polygon;
  readonly point: (point: Point) => Point;
  readonly direction: (direction: Point) => Point;
}

export const mirroring: Move = {
  polygon: mirror,
  point: ({ x, y }) => ({ x: 0 - x, y }),
  direction: ({ x, y }) => ({ x: 0 - x, y }),
};

export const movingBy = (dx: number, dy: number): Move => ({
  polygon: (polygon) => translate(polygon, dx, dy),
  point: ({ x, y }) => ({ x: x + dx, y: y + dy }),
  direction: (direction) => direction,
});

/** About the origin, counter-clockwise. */
export function turningBy(angleDeg: number): Move {
  const point = ({ x, y }: Point): Point => {
    const turned = rotate(Float64Array.of(x, y), angleDeg);
    return { x: turned[0]!, y: turned[1]! };
  };
  return { polygon: (polygon) => rotate(polygon, angleDeg), point, direction: point };
}

/** The floor of a pocket slopes along y alone, so a sloping one bears no turning. */
export function moved(body: Solid, move: Move): Solid {
  return {
    outline: move.polygon(body.outline),
    heightMm: body.heightMm,
    top: movedFace(body.top, move),
    back: movedFace(body.back, move),
    voids: body.voids.map((cut) => movedVoid(cut, move)),
  };
}

function movedFace(own: Face, move: Move): Face {
  const line = ({ points, closed }: EdgeLine) => edgeLine(move.polygon(points), closed);
  return {
    ...own,
    carve: { ...own.carve, from: line(own.carve.from) },
    edge: line(own.edge),
    contours: own.contours.map((contour) => movedContour(contour, move)),
  };
}

function movedContour(contour: Contour, move: Move): Contour {
  const at = move.point({ x: contour.xMm, y: contour.yMm });
  const toward = move.direction({ x: contour.towardX, y: contour.towardY });
  return { ...contour, xMm: at.x, yMm: at.y, towardX: toward.x, towardY: toward.y };
}

export function movedVoid(cut: Void, move: Move): Void {
  if (cut.kind === 'pocket') {
    const floor = { ...cut.floor, yMm: move.point({ x: 0, y: cut.floor.yMm }).y };
    return { ...cut, floor, region: cut.region.map((ring) => move.polygon(ring)) };
  }
  const end = ({ xMm, yMm, zMm }: Point3): Point3 => {
    const { x, y } = move.point({ x: xMm, y: yMm });
    return { xMm: x, yMm: y, zMm };
  };
  return { ...cut, from: end(cut.from), to: end(cut.to) };
}
