/** Bodies as meshes for an independent solid kernel, made from formulas; and what a plumb line meets in a mesh. */
import init, { type Manifold, type ManifoldToplevel } from 'manifold-3d';
import type { Polygon } from '../../src/geometry/polygon.ts';
import type { Pocket, Tube, Void } from '../../src/geometry/solid/solid.ts';
import { levelLines } from './level-lines.ts';
import type { Triple } from './make.ts';

export type Kernel = ManifoldToplevel;
export type { Manifold };

export async function startKernel(): Promise<Kernel> {
  const kernel = await init();
  kernel.setup();
  return kernel;
}

/** mm below the high plane by the distance from the edge, and the distances between which it may be taken as straight. */
export interface Slope {
  readonly down: (d: number) => number;
  readonly at: readonly number[];
}

export const LEVEL: Slope = { down: () => 0, at: [] };

/** Upright sides, a face above and one below. `linesOf` finds the lines at a distance inside the outline. */
export function bodyMesh(
  kernel: Kernel,
  outline: Polygon,
  heightMm: number,
  top: Slope,
  back: Slope,
  linesOf = levelLines,
): Manifold {
  const points: number[] = [];
  const triangles: number[] = [];
  const add = (ring: Polygon, z: number): number[] => {
    const first = points.length / 3;
    for (let i = 0; i < ring.length; i += 2) points.push(ring[i]!, ring[i + 1]!, z);
    return Array.from({ length: ring.length / 2 }, (_, i) => first + i);
  };

  /** Bands from each line to the next further in, then what the last encloses. */
  const face = ({ down, at }: Slope, height: (down: number) => number, upward: boolean): number[] => {
    const lines = [[outline], ...linesOf(outline, at)];
    const rings = lines.map((line, i) => line.map((ring) => add(ring, height(down(i === 0 ? 0 : at[i - 1]!)))));
    rings.forEach((outer, i) => {
      const inner = (rings[i + 1] ?? []).map((ring) => ring.toReversed());
      const all = [...outer, ...inner];
      const flat = all.map((ring) => ring.map((k) => [points[3 * k]!, points[3 * k + 1]!] as [number, number]));
      const order = all.flat();
      for (const [p, q, r] of kernel.triangulate(flat, 1e-7)) {
        const corners = [order[p]!, order[q]!, order[r]!];
        triangles.push(...(upward ? corners : corners.toReversed()));
      }
    });
    return rings[0]![0]!;
  };

  const above = face(top, (down) => heightMm - down, true);
  const below = face(back, (down) => down, false);
  above.forEach((corner, i) => {
    const j = (i + 1) % above.length;
    triangles.push(below[i]!, below[j]!, above[j]!, below[i]!, above[j]!, corner);
  });
  return checked(
    new kernel.Manifold(
      new kernel.Mesh({
        numProp: 3,
        vertProperties: Float32Array.from(points),
        triVerts: Uint32Array.from(triangles),
      }),
    ),
  );
}

function checked(made: Manifold): Manifold {
  const status: unknown = made.status();
  if (status !== 'NoError') throw new Error(`not a solid: ${String(status)}`);
  return made;
}

/** Far outside of any body. */
const BEYOND_MM = 100;
/** Sides of what is round: within 0.00002 of the radius. */
const SIDES = 512;

function prism(kernel: Kernel, plan: readonly Polygon[], low: number, high: number): Manifold {
  const rings = plan.map((ring) =>
    Array.from({ length: ring.length / 2 }, (_, i) => [ring[2 * i]!, ring[2 * i + 1]!] as [number, number]),
  );
  return kernel.Manifold.extrude(new kernel.CrossSection(rings, 'NonZero'), high - low).translate(0, 0, low);
}

export function voidMesh(kernel: Kernel, cut: Void): Manifold {
  return cut.kind === 'tube' ? barMesh(kernel, cut) : pocketMesh(kernel, cut);
}

/** A long prism, cut off along its floor: z = zMm + slope · (y − yMm). */
function pocketMesh(kernel: Kernel, { region, opens, floor: { zMm, slope, yMm }, roofMm }: Pocket): Manifold {
  const whole = prism(kernel, region, -BEYOND_MM, roofMm ?? BEYOND_MM);
  const up = opens === 'back' ? -1 : 1;
  return whole.trimByPlane([0, -slope * up, up], (up * (zMm - slope * yMm)) / Math.hypot(1, slope));
}

function barMesh(kernel: Kernel, { from, to, radiusMm }: Tube): Manifold {
  const [dx, dy, dz] = [to.xMm - from.xMm, to.yMm - from.yMm, to.zMm - from.zMm];
  const length = Math.hypot(dx, dy, dz);
  const [tilt, turn] = [Math.acos(dz / length), Math.atan2(dy, dx)].map((angle) => (angle * 180) / Math.PI);
  return kernel.Manifold.cylinder(length, radiusMm, radiusMm, SIDES)
    .rotate([0, tilt!, turn!])
    .translate([from.xMm, from.yMm, from.zMm]);
}

/** Of a ball: within 0.002 of its radius. */
const BALL_SIDES = 48;

/** All that is no further from a bar's axis than its radius. */
export function roundEnded(kernel: Kernel, { from, to, radiusMm }: Tube): Manifold {
  const ball = kernel.Manifold.sphere(radiusMm, BALL_SIDES);
  const end = ({ xMm, yMm, zMm }: Tube['from']) => ball.translate([xMm, yMm, zMm]);
  return kernel.Manifold.hull([end(from), end(to)]);
}

/** A round bar of that radius through a point, level, in a direction: for a dish. */
export function roller(kernel: Kernel, at: Triple, directionDeg: number, radiusMm: number): Manifold {
  const half = 5 * BEYOND_MM;
  return kernel.Manifold.cylinder(2 * half, radiusMm, radiusMm, 4 * SIDES)
    .translate(0, 0, -half)
    .rotate([0, 90, directionDeg])
    .translate([...at]);
}

/** Volume and centre from the triangles: sums of tetrahedra about the origin. */
export function massOf(mesh: Manifold): { readonly mm3: number; readonly centre: Triple } {
  const corner = cornersOf(mesh);
  let [mm3, x, y, z] = [0, 0, 0, 0];
  for (let t = 0; t < mesh.numTri(); t++) {
    const [a, b, c] = [corner(t, 0), corner(t, 1), corner(t, 2)];
    const part =
      (a[0] * (b[1] * c[2] - b[2] * c[1]) + a[1] * (b[2] * c[0] - b[0] * c[2]) + a[2] * (b[0] * c[1] - b[1] * c[0])) /
      6;
    mm3 += part;
    x += (part * (a[0] + b[0] + c[0])) / 4;
    y += (part * (a[1] + b[1] + c[1])) / 4;
    z += (part * (a[2] + b[2] + c[2])) / 4;
  }
  return { mm3, centre: [x / mm3, y / mm3, z / mm3] };
}

function cornersOf(mesh: Manifold): (triangle: number, k: number) => Triple {
  const { numProp, vertProperties, triVerts } = mesh.getMesh();
  return (triangle, k) => {
    const at = triVerts[3 * triangle + k]! * numProp;
    return [vertProperties[at]!, vertProperties[at + 1]!, vertProperties[at + 2]!];
  };
}

/** z of every surface a plumb line through (x, y) meets, from the lowest up: into the wood and out of it by turns. */
export type Plumb = (x: number, y: number) => readonly number[];

const SQUARE_MM = 3;

export function plumbLines(mesh: Manifold): Plumb {
  const corner = cornersOf(mesh);
  const squares = new Map<number, Triangle[]>();
  const key = (col: number, row: number) => col * 65_536 + row;
  for (let t = 0; t < mesh.numTri(); t++) {
    const triangle: Triangle = [corner(t, 0), corner(t, 1), corner(t, 2)];
    const [cols, rows] = ([0, 1] as const).map((axis) => triangle.map((p) => Math.floor(p[axis] / SQUARE_MM)));
    for (let col = Math.min(...cols!); col <= Math.max(...cols!); col++) {
      for (let row = Math.min(...rows!); row <= Math.max(...rows!); row++) {
        const there = squares.get(key(col, row));
        if (there) there.push(triangle);
        else squares.set(key(col, row), [triangle]);
      }
    }
  }
  return (x, y) => {
    const met: number[] = [];
    for (const triangle of squares.get(key(Math.floor(x / SQUARE_MM), Math.floor(y / SQUARE_MM))) ?? []) {
      const [a, b, c] = triangle;
      if ((isOver(a, b, x, y) !== isOver(b, c, x, y)) !== isOver(c, a, x, y)) met.push(heightAt(triangle, x, y));
    }
    return met.toSorted((a, b) => a - b);
  };
}

type Triangle = readonly [Triple, Triple, Triple];

/** Each side is decided by the same sum whichever triangle asks, so a line along a side meets one of the two. */
function isOver(p: Triple, q: Triple, x: number, y: number): boolean {
  if (p[1] > y === q[1] > y) return false;
  const [low, high] = p[1] < q[1] ? [p, q] : [q, p];
  return x < low[0] + ((y - low[1]) * (high[0] - low[0])) / (high[1] - low[1]);
}

function heightAt([a, b, c]: Triangle, x: number, y: number): number {
  const area = (b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1]);
  const s = ((x - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (y - a[1])) / area;
  const t = ((b[0] - a[0]) * (y - a[1]) - (x - a[0]) * (b[1] - a[1])) / area;
  return a[2] + s * (b[2] - a[2]) + t * (c[2] - a[2]);
}
