/**
 * Tacks of the lamination. What the facts say of the zone is held against distances measured anew at points of its own: to
 * the edge of the wood and to the blade, both strayed as far as they may; pins in the body, against columns of the solid.
 */
import { describe, expect, test } from 'vitest';
import { checkAll } from '../../src/compile.ts';
import type { Derived } from '../../src/compile.ts';
import type { Facts } from '../../src/facts/facts.ts';
import { nearestOnRegion } from '../../src/geometry/apart.ts';
import { contains, distanceToEdge, regionContains } from '../../src/geometry/nearness.ts';
import { layersAt } from '../../src/geometry/solid/column.ts';
import { memoryHost } from '../../src/host/memory.ts';
import { demoFiles } from '../cards/demo.ts';
import type { Edit } from '../cases/workspace.ts';
import { edited } from '../cases/workspace.ts';
import { MM, valueOf } from './subject.ts';

/** By hand from the plant: trim line, its kerf outside it, what both saws stray, wood to an edge, tack, off its mark. */
const PLANT = { trim: 2.5, kerf: 1.0, trimWander: 0.8, edge: 2.5, diameter: 1.2, offMark: 0.5, roughWander: 1.6 };
/** Offsets lie within a few thousandths of the true line. */
const HAIR_MM = 0.005;

const demo = checkAll(memoryHost(demoFiles())).models.flatMap(({ id, hands }) =>
  hands
    .filter(({ facts }) => facts.has('tacks.by-rule'))
    .map((hand) => [`${id}, ${hand.subject.hand}`, hand.facts] as const),
);

describe('the waste of the demo models', () => {
  test('the rough line needs the sum of all that stands beside it', () => {
    const { trim, kerf, trimWander, edge, diameter, offMark, roughWander } = PLANT;
    const sum = trim + kerf + trimWander + edge + diameter + 2 * offMark + edge + roughWander;
    expect(demo.length).toBeGreaterThan(4);
    for (const [, facts] of demo) {
      const needed = valueOf(facts, `tacks.rough-needed.${kindOf(facts)}`).value / MM;
      expect(needed).toBeCloseTo(sum, 9);
      expect(valueOf(facts, 'saw.rough.distance').value / MM).toBeGreaterThanOrEqual(needed);
    }
  });

  test.each(demo)('%s: no point of the zone is nearer than the edge to blade, wood’s edge or seam', (_, facts) => {
    const { kerf, trimWander, roughWander, edge } = PLANT;
    const [trim, rough] = [valueOf(facts, 'saw.trim.line'), valueOf(facts, 'saw.rough.line')];
    const seams = seamsOf(facts);
    const points = pointsOf(valueOf(facts, `tacks.zone.${kindOf(facts)}`));
    expect(points.length).toBeGreaterThan(500);
    for (const [x, y] of points) {
      expect(contains(trim, x, y)).toBe(false);
      expect(distanceToEdge(trim, x, y)).toBeGreaterThan(kerf + trimWander + edge - HAIR_MM);
      expect(contains(rough, x, y)).toBe(true);
      expect(distanceToEdge(rough, x, y)).toBeGreaterThan(roughWander + edge - HAIR_MM);
      for (const seam of seams) expect(Math.abs(x - seam)).toBeGreaterThan(edge - HAIR_MM);
    }
  });

  test.each(demo)('%s: every spot, as far off its mark as it may, stands whole inside the zone', (_, facts) => {
    const zone = valueOf(facts, `tacks.zone.${kindOf(facts)}`);
    const spots = spotsOf(facts);
    expect(spots).toHaveLength(6);
    // Rounding of the spot to 0.1 mm counts as off its mark.
    const keep = PLANT.diameter / 2 + PLANT.offMark - 0.08;
    for (const { xMm, yMm, inBody } of spots) {
      expect([Math.round(xMm * 10) / 10, Math.round(yMm * 10) / 10]).toEqual([xMm, yMm]);
      expect(inBody).toBe(false);
      expect(regionContains(zone, xMm, yMm)).toBe(true);
      expect(nearestOnRegion(zone, xMm, yMm).distanceMm).toBeGreaterThan(keep - HAIR_MM);
    }
  });

  test.each(demo)('%s: spots go all round, no gap twice another', (_, facts) => {
    const spots = spotsOf(facts);
    const outline = valueOf(facts, 'outline.polygon');
    const along = spots.map(({ xMm, yMm }) => alongEdge(outline, xMm, yMm)).toSorted((a, b) => a - b);
    const whole = alongEdge(outline, NaN, NaN);
    const gaps = along.map((at, i) => (i === 0 ? at + whole - along.at(-1)! : at - along[i - 1]!));
    expect(Math.max(...gaps)).toBeLessThan(2 * Math.min(...gaps));
  });
});

const kindOf = (facts: Facts): string => valueOf(facts, 'tack.1.spot').kind;

/** Each corner of the rings, and the middle of each of their edges. */
function pointsOf(region: readonly Float64Array[]): (readonly [number, number])[] {
  return region.flatMap((ring) =>
    Array.from({ length: ring.length / 2 }, (_, i) => i).flatMap((i) => {
      const j = (i + 1) % (ring.length / 2);
      const [a, b] = [[ring[2 * i]!, ring[2 * i + 1]!] as const, [ring[2 * j]!, ring[2 * j + 1]!] as const];
      return [a, [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2] as const];
    }),
  );
}

function seamsOf(facts: Facts): number[] {
  return (['cap', 'back'] as const).flatMap((part) => {
    const pieces = valueOf(facts, `blank.${part}.pieces`).value;
    const width = valueOf(facts, 'blank.width').value / MM;
    return Array.from({ length: pieces - 1 }, (_, k) => (width * (k + 1)) / pieces - width / 2);
  });
}

const spotsOf = (facts: Facts) =>
  Array.from({ length: valueOf(facts, 'tacks.count').value }, (_, i) => valueOf(facts, `tack.${i + 1}.spot`));

/** How far along a polygon its nearest place to a point lies; of no point, the whole way. */
function alongEdge(polygon: Float64Array, x: number, y: number): number {
  let [at, best, walked] = [0, Infinity, 0];
  for (let i = 0; i < polygon.length; i += 2) {
    const j = (i + 2) % polygon.length;
    const [x0, y0, x1, y1] = [polygon[i]!, polygon[i + 1]!, polygon[j]!, polygon[j + 1]!];
    const away = Math.hypot(x0 - x, y0 - y);
    if (away < best) [best, at] = [away, walked];
    walked += Math.hypot(x1 - x0, y1 - y0);
  }
  return Number.isNaN(x) ? walked : at;
}

describe('pins in the body of the sample', () => {
  const file = 'models/tarn.yaml';
  const pin = 'pin-b: { at: { x: -70, y: -130 }, kind: pin-14 }';
  const plant = 'models/plant/plant.yaml';
  const row = 'length: 14, diameter: 1.2, bite: 6';

  function tried(...edits: readonly Edit[]) {
    const [model] = checkAll(memoryHost(edited(edits)), '2026-11-25').models;
    const ids = model!.findings.flatMap((one) => [one, ...(one.follows ?? [])]);
    return { right: model!.hands[0]!, found: ids.filter(({ id }) => id === 'tack-met-by-cutter') };
  }

  /** Wood over and under the pin, in the column of the finished solid nearest to it within 2.5 mm of its side. */
  function wood({ facts }: Derived, id: string): number {
    const { from, to, radiusMm } = valueOf(facts, `tack.${id}.bar`);
    const solid = valueOf(facts, 'body.solid');
    let least = Infinity;
    for (let r = 0; r <= radiusMm + 2.5; r += 0.25) {
      for (let k = 0; k < 48; k++) {
        const [x, y] = [from.xMm + r * Math.cos((k * Math.PI) / 24), from.yMm + r * Math.sin((k * Math.PI) / 24)];
        const layer = layersAt(solid, x, y).find(({ lowMm, highMm }) => lowMm < from.zMm && highMm > to.zMm);
        if (!layer) return -1;
        least = Math.min(least, layer.highMm - to.zMm, from.zMm - layer.lowMm);
      }
    }
    return least;
  }

  test('as they stand, solid wood is all round them', () => {
    const { right, found } = tried();
    expect(found).toEqual([]);
    for (const id of ['pin-a', 'pin-b']) expect(wood(right, id)).toBeGreaterThan(2.5);
  });

  test('over a cavity that is cut from the back', () => {
    const { right, found } = tried({ file, find: pin, replace: 'pin-b: { at: { x: 80, y: -100 }, kind: pin-14 }' });
    expect(found[0]!.what).toContain('controls');
    expect(wood(right, 'pin-b')).toBe(-1);
  });

  test('clear over a shallow cavity of the back: 15 deep at most 15.6, and the pin begins at 25.8', () => {
    const battery = { file, find: 'depth: 20.0 ±0.6', replace: 'depth: 2.0 ±0.6' } as const;
    const pickup = {
      file,
      find: 'into: [neck-pocket, neck-pickup, bridge-pickup]',
      replace: 'into: [neck-pocket]',
    } as const;
    const { right } = tried(battery, pickup, {
      file,
      find: pin,
      replace: 'pin-b: { at: { x: -20, y: 44 }, kind: pin-14 }',
    });
    const left = valueOf(right.facts, 'tack.pin-b.left').find(({ against }) => against === 'cavity.battery')!;
    // z of the pin's foot 33.85 − 8.00 = 25.85 over 15.0, less the pin's half width and how far it may be off its mark.
    expect(left.wood.value / MM).toBeCloseTo(25.85 - 15 - 0.6 - 0.5, 3);
    // Cap, glue and back put the glue face ±0.31 off the faced back at most; the gauge passes the cavity within ±0.6.
    expect(left.wood.low! / MM).toBeLessThan(left.wood.value / MM - 0.6);
  });

  test('under the carve near the edge, where the top comes down to it', () => {
    // 45.40 − 0.80 in the recurve; the pin reaches 33.85 + 10 = 43.85.
    const longer = { file: plant, find: row, replace: 'length: 20, diameter: 1.2, bite: 10' } as const;
    const { right, found } = tried(longer, {
      file,
      find: pin,
      replace: 'pin-b: { at: { x: -90, y: -176 }, kind: pin-14 }',
    });
    expect(found.some(({ what }) => /pin-b and the top/.test(what))).toBe(true);
    expect(wood(right, 'pin-b')).toBeLessThan(2.5);
  });

  test('through the crown', () => {
    // The crown is at 49.60; the pin reaches 33.85 + 15.9 = 49.75 in a cap of 16.40.
    const longest = { file: plant, find: row, replace: 'length: 32, diameter: 1.2, bite: 15.9' } as const;
    const { right, found } = tried(longest, {
      file,
      find: pin,
      replace: 'pin-b: { at: { x: -40, y: -90 }, kind: pin-14 }',
    });
    const at = found.find(({ what }) => /pin-b and the top/.test(what))!;
    expect(at.what).toContain('no wood is left');
    expect(wood(right, 'pin-b')).toBe(-1);
  });

  test('beside a cavity, nearer than its edge distance though not in it', () => {
    // The controls begin at x 45: 45 − 42 − 0.6 − 0.5 = 1.9 of wood.
    const { found } = tried({ file, find: pin, replace: 'pin-b: { at: { x: 42, y: -100 }, kind: pin-14 }' });
    expect(found[0]!.what).toMatch(/pin-b and the cavity controls.* 1\.90 mm of wood are left as drawn/);
  });

  test('at the side of the body', () => {
    const { found } = tried({ file, find: pin, replace: 'pin-b: { at: { x: -70, y: -197.2 }, kind: pin-14 }' });
    expect(found[0]!.what).toMatch(/pin-b and the (side of the body|top)/);
  });
});
