/**
 * The machined body of every demo model, as the program works it out of its spec, against an independent general-purpose
 * solid kernel (manifold-3d). There, the faces are meshes between lines at known distances from the edge, their heights
 * written down by hand from the spec (demo-shapes.ts); every cut is a boolean.
 */
import { beforeAll, describe, expect, it } from 'vitest';
import type { Reading, Use } from '../../src/facts/facts.ts';
import { bounds } from '../../src/geometry/measure.ts';
import { regionContains } from '../../src/geometry/nearness.ts';
import type { Polygon } from '../../src/geometry/polygon.ts';
import { forEachEdge } from '../../src/geometry/polygon.ts';
import { fieldOf } from '../../src/geometry/solid/field.ts';
import type { Pocket } from '../../src/geometry/solid/solid.ts';
import { compileDemo } from '../cards/demo.ts';
import { DEMO_SHAPES, demoMesh } from './demo-shapes.ts';
import { centreOf, near } from './make.ts';
import type { Kernel, Plumb } from './mesh.ts';
import { massOf, plumbLines, startKernel, voidMesh } from './mesh.ts';

/** Share of the volume, a tenth of what is promised; mm. */
const VOLUME = 1e-4;
const CENTRE_MM = 0.01;
const THICKNESS_MM = 0.05;
const MM3_PER_M3 = 1e9;

const { checked } = compileDemo();

/** The right hand of each model as far as its facts know it. */
const bodies = checked.models.map(({ id, hands: [right] }) => {
  const read = <T>(reader: (use: Use) => T): T => known(id, right!.facts.read(reader));
  return {
    id,
    solid: read((use) => use.fact('body.solid')),
    field: read((use) => use.fact('body.field')),
    volumeMm3: read((use) => use.fact('body.volume')).value * MM3_PER_M3,
    thinnest: read((use) => use.fact('body.thinnest')),
  };
});

function known<T>(id: string, reading: Reading<T>): T {
  if (!reading.ok) throw new Error(`${id}: ${reading.missing.join(', ')} is missing`);
  return reading.value;
}

let kernel: Kernel;
beforeAll(async () => {
  kernel = await startKernel();
});

it('knows the shape of every demo model, and of no other', () => {
  expect(Object.keys(DEMO_SHAPES)).toEqual(bodies.map(({ id }) => id));
});

/** The one whose every cut is taken by itself; of the others, at three places on the way. */
const EVERY_CUT = 'holm';

/** BODIES_ALL=1 takes all; without it a carved cap, a hollow body and a slab with contours. */
const SOME = ['holm', 'tarn', 'voe', 'fell'];
const taken = bodies.filter(({ id }) => process.env['BODIES_ALL'] !== undefined || SOME.includes(id));

describe.each(taken)('$id', ({ id, solid, field, volumeMm3, thinnest }) => {
  let mass: ReturnType<typeof massOf>;
  let met: Plumb;

  beforeAll(() => {
    const uncut = demoMesh(kernel, solid.outline, DEMO_SHAPES[id]!);
    const cut = kernel.Manifold.difference([uncut, ...solid.voids.map((one) => voidMesh(kernel, one))]);
    [mass, met] = [massOf(cut), plumbLines(cut)];
  });

  it('has the same volume and centre', () => {
    near('volume', volumeMm3 / mass.mm3, 1, VOLUME);
    centreOf(field).forEach((found, axis) => near(`centre along axis ${axis}`, found, mass.centre[axis]!, CENTRE_MM));
  });

  it('is as thin over the cavity it names as the thinnest layer there, and at the place it names', () => {
    const cavity = solid.voids.find((one): one is Pocket => one.kind === 'pocket' && one.id === thinnest?.cut);
    const { mm, xMm, yMm } = thinnest!.left;
    near('thinnest over the cavity', mm, Math.min(...layersOver(cavity!, met)), THICKNESS_MM);
    // The place is a corner of the cavity as often as not: a hair to all sides of it, what is still over the cavity.
    const about = around(xMm, yMm).filter(([x, y]) => regionContains(cavity!.region, x, y));
    expect(about.length).toBeGreaterThan(0);
    for (const [x, y] of about) near('thinnest at its place', mm, Math.min(...layersAt(met, x, y)), THICKNESS_MM);
  });

  it('is what was shaped less what each cut took, after any number of them', () => {
    const leftAfter = (cuts: number) =>
      field.removedMm3.slice(0, cuts).reduce((left, mm3) => left - mm3, field.shapedMm3);
    const all = solid.voids.length;
    expect(field.removedMm3.length).toBe(all);
    near('all', leftAfter(all) / volumeMm3, 1, 1e-6);
    const some = id === EVERY_CUT ? Array.from({ length: all }, (_, k) => k) : [1, Math.floor(all / 2), all - 1];
    for (const cuts of some) {
      const { volumeMm3: found } = fieldOf({ ...solid, voids: solid.voids.slice(0, cuts) });
      near(`after ${cuts} cuts`, found / leftAfter(cuts), 1, 1e-9);
    }
  });
});

type Spot = readonly [x: number, y: number];

const HAIR_MM = 0.01;

const around = (x: number, y: number): readonly Spot[] =>
  Array.from({ length: 16 }, (_, k) => [
    x + HAIR_MM * Math.cos((k * Math.PI) / 8),
    y + HAIR_MM * Math.sin((k * Math.PI) / 8),
  ]);

/** mm of every layer of wood a plumb line meets; none in a hole right through. */
function layersAt(met: Plumb, x: number, y: number): readonly number[] {
  const surfaces = met(x, y);
  return surfaces.flatMap((z, i) => (i % 2 === 1 ? [z - surfaces[i - 1]!] : []));
}

/** Of plumb lines every 0.5 mm over a cavity, and along its edge a hair inside. */
function layersOver({ region }: Pocket, met: Plumb): readonly number[] {
  const spots = region.flatMap((ring) => [...gridOver(ring), ...alongInside(ring)]);
  return spots.flatMap(([x, y]) => (regionContains(region, x, y) ? layersAt(met, x, y) : []));
}

function gridOver(ring: Polygon): readonly Spot[] {
  const { minX, minY, maxX, maxY } = bounds(ring)!;
  const spots: Spot[] = [];
  for (let y = minY + 0.0123; y < maxY; y += 0.5) for (let x = minX + 0.0171; x < maxX; x += 0.5) spots.push([x, y]);
  return spots;
}

function alongInside(ring: Polygon): readonly Spot[] {
  const spots: Spot[] = [];
  forEachEdge(ring, (x0, y0, x1, y1) => {
    const length = Math.hypot(x1 - x0, y1 - y0);
    const [ux, uy] = [(x1 - x0) / length, (y1 - y0) / length];
    for (let along = 0; along < length; along += 0.2) {
      spots.push([x0 + along * ux - 1e-3 * uy, y0 + along * uy + 1e-3 * ux]);
    }
  });
  return spots;
}
