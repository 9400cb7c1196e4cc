/** The machined body of a demo model by an independent kernel for solids, made the way one would make it there. */
import type { Polygon } from '../../src/geometry/polygon.ts';
import type { Solid } from '../../src/geometry/solid/solid.ts';
import { DEMO_SHAPES, demoMesh } from '../solid/demo-shapes.ts';
import type { Kernel } from '../solid/mesh.ts';
import { voidMesh } from '../solid/mesh.ts';

/** Volume, mm³: lines inside the outline by the kernel's own offsets, the mesh between them, one boolean for all cuts. */
export function byManifold(kernel: Kernel, id: string, { outline, voids }: Solid): number {
  const body = demoMesh(kernel, outline, DEMO_SHAPES[id]!, (line, distances) => offsets(kernel, line, distances));
  const cuts = voids.map((cut) => voidMesh(kernel, cut));
  const cut = kernel.Manifold.difference([body, ...cuts]);
  const mm3 = cut.volume();
  for (const made of [body, ...cuts, cut]) made.delete();
  return mm3;
}

/** Sides of a full turn where an outline that bends inward is rounded. */
const TURN_SIDES = 256;

function offsets(kernel: Kernel, outline: Polygon, distancesMm: readonly number[]): readonly (readonly Polygon[])[] {
  const ring = Array.from({ length: outline.length / 2 }, (_, i): [number, number] => [
    outline[2 * i]!,
    outline[2 * i + 1]!,
  ]);
  const plan = new kernel.CrossSection([ring]);
  const lines = distancesMm.map((distance) => {
    const inside = plan.offset(-distance, 'Round', 2, TURN_SIDES);
    const rings = inside.toPolygons().map((points: [number, number][]) => Float64Array.from(points.flat()));
    inside.delete();
    return rings;
  });
  plan.delete();
  return lines;
}
