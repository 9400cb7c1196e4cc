/** What holds the sample down, worked out by hand; areas, gaskets and ways of air against a slow count. */
import { describe, expect, test } from 'vitest';
import { checkAll } from '../../src/compile.ts';
import type { Hollow } from '../../src/derive/zones.ts';
import { leaksOf, openedBy, zonePlace } from '../../src/derive/zones.ts';
import type { Facts } from '../../src/facts/facts.ts';
import { memoryHost } from '../../src/host/memory.ts';
import { banded } from '../../src/geometry/banded.ts';
import { contains } from '../../src/geometry/nearness.ts';
import { bounds, regionArea } from '../../src/geometry/measure.ts';
import { intersection } from '../../src/geometry/offset.ts';
import type { Polygon } from '../../src/geometry/polygon.ts';
import { shapePolygon } from '../../src/geometry/shape.ts';
import { heldSideways } from '../../src/reference/hold-down.ts';
import type { Edit } from '../cases/workspace.ts';
import { edited, sample } from '../cases/workspace.ts';
import { seeded } from '../faults/seeded.ts';
import { valueOf } from './subject.ts';

const modelWith = (...edits: readonly Edit[]) =>
  checkAll(memoryHost(edits.length > 0 ? edited(edits) : sample()), '2026-11-25').models[0]!;
const factsWith = (...edits: readonly Edit[]): Facts => modelWith(...edits).hands[0]!.facts;
const idsWith = (...edits: readonly Edit[]): string[] => modelWith(...edits).findings.map(({ id }) => id);
const plant = 'models/plant/plant.yaml';
const tarn = 'models/tarn.yaml';

const facts = factsWith();

/** A rectangle less what its rounded corners leave out, mm². */
const rounded = (length: number, width: number, corner: number) => length * width - (4 - Math.PI) * corner ** 2;

describe('the sample', () => {
  const [bass, upper, neck] = [rounded(144, 86, 20), rounded(90, 76, 12), rounded(46, 56, 10)];

  test('each zone holds with its area at what the interlock lets through', () => {
    expect(valueOf(facts, 'zone.top.bass.area')!.value * 1e6).toBeCloseTo(bass, -1);
    expect(valueOf(facts, 'zone.top.bass.force')!.value).toBeCloseTo(70_000 * bass * 1e-6, 0);
    expect(valueOf(facts, 'hold.top.start')!.value).toBeCloseTo(0.07 * (bass + upper + neck), 0);
  });

  test('its neck zone lies round the hole of a pin, and is not opened by it but by the pocket over the neck screw', () => {
    expect(valueOf(facts, 'zone.top.neck.leaks')).toEqual([]);
    expect(valueOf(facts, 'zones.top.opened')).toEqual([
      { zone: 'neck', step: 'cavity.neck-pocket', at: 4, way: 'face', by: ['hole.neck-screw', 'cavity.neck-pocket'] },
    ]);
    expect(valueOf(facts, 'hold.top.least')!.value).toBeCloseTo(0.07 * (bass + upper), 0);
  });

  test('friction × force ÷ factor against the side force of each cutter; drills push down', () => {
    const steps = valueOf(facts, 'hold.top.steps');
    expect(steps.map(({ step, side }) => [step, side])).toEqual([
      ['top.carve', 160],
      ['top.perimeter', 160],
      // Two of one kind by their names.
      ['cavity.bridge-pickup', 80],
      ['cavity.neck-pickup', 80],
      ['cavity.neck-pocket', 120],
    ]);
    const force = 0.07 * (bass + upper + neck);
    // The cut that opens a zone is held without it.
    for (const { step, holds } of steps) {
      const left = step === 'cavity.neck-pocket' ? force - 0.07 * neck : force;
      expect(holds).toBeCloseTo((0.35 * left) / 3, 0);
    }
    expect(valueOf(facts, 'hold.top.nearest')!.step).toBe('top.carve');
  });

  test('a back set-up in clamps has nothing of it', () => {
    expect(valueOf(facts, 'hold.back.difference')).toBeUndefined();
    expect(valueOf(facts, 'zones.back.opened')).toEqual([]);
    expect(valueOf(facts, 'hold.back.start')).toBeUndefined();
  });
});

// Round controls, cover seat and pilot: 37..123 by −139..−61, the pilot at 40.8. Its pin hole ends at x 28.
const round: Edit = {
  file: plant,
  find: 'upper: { title: Upper, shape: { kind: rectangle, length: 90, width: 76 }, at: { x: -77, y: 100 }, corner: 12 }',
  replace:
    'upper: { title: Upper, shape: { kind: rectangle, length: 86, width: 90 }, at: { x: 80, y: -100 }, corner: 3 }',
};
const narrow: Edit = {
  file: plant,
  find: 'land: 1.4 } }\n    pin-length: 8 ±0.2\n    gasket: 6\n    zones:\n      bass: { title: Bass, shape: { kind: rectangle, length: 144, width: 86 }, at: { x: -79',
  replace:
    'land: 1.4 } }\n    pin-length: 8 ±0.2\n    gasket: 5\n    zones:\n      bass: { title: Bass, shape: { kind: rectangle, length: 144, width: 86 }, at: { x: -79',
};

/** What opens the zone in question: the one at the neck is opened by the pocket in any case. */
const upperOpened = (of: Facts) => valueOf(of, 'zones.top.opened').filter(({ zone }) => zone === 'upper');

describe('a zone round a cavity of the back', () => {
  const zone = upperOpened(factsWith(round, narrow)).map(({ zone, step, way, by }) => ({ zone, step, way, by }));

  test('holds with all of its area until the first cut that lets air in', () => {
    expect(zone).toEqual([
      { zone: 'upper', step: 'hole.volume-shaft', way: 'face', by: ['cavity.controls', 'hole.volume-shaft'] },
    ]);
  });

  test('through a channel, by way of the cavity it starts in', () => {
    const shaft = '  volume-shaft:\n    setup: top\n    at: { x: 70, y: -88 }\n';
    const elsewhere = factsWith(round, narrow, { file: tarn, find: shaft, replace: shaft.replace('-88', '150') });
    expect(upperOpened(elsewhere)).toMatchObject([
      {
        zone: 'upper',
        step: 'channel.bridge-wire',
        way: 'face',
        by: ['cavity.controls', 'channel.bridge-wire', 'cavity.bridge-pickup'],
      },
    ]);
  });

  test('a gasket over the seat of a cover seals nothing, and holds nothing', () => {
    const over: Edit = { ...round, replace: (round as { replace: string }).replace.replace('x: 80', 'x: 84') };
    const found = factsWith(over, narrow);
    expect(valueOf(found, 'zone.top.upper.leaks')!.map(({ id }) => id)).toContain('cavity.controls-cover');
    expect(upperOpened(found)).toEqual([{ zone: 'upper', step: 'start', at: -1, way: 'gasket', by: [] }]);
    expect(valueOf(found, 'hold.top.start')!.value).toBeLessThan(valueOf(facts, 'hold.top.start')!.value);
    expect(idsWith(over, narrow)).toContain('zone-does-not-seal');
  });
});

describe('planted faults', () => {
  const set = (find: string, replace: string): Edit => ({ file: plant, find, replace });
  const pitch = (text: string) => set('interlock: 70 kPa', `interlock: ${text}`);

  test('force just enough passes, a little less does not', () => {
    // 160 N × 3 ÷ 0.35 = 1371.4 N, over the sum of the areas: 64.5 kPa.
    const area = valueOf(facts, 'hold.top.start')!.value / 70_000;
    const least = (160 * 3) / 0.35 / area / 1000;
    expect(idsWith(pitch(`${(least + 0.05).toFixed(2)} kPa`))).not.toContain('hold-down-poor');
    expect(idsWith(pitch(`${(least - 0.05).toFixed(2)} kPa`))).toContain('hold-down-poor');
  });

  test('an interlock may say inches of mercury, and no more than there are', () => {
    expect(idsWith(pitch('21 inHg'))).toEqual([]);
    expect(idsWith(pitch('29.9 inHg'))).not.toContain('vacuum-over-ambient');
    expect(idsWith(pitch('30 inHg'))).toContain('vacuum-over-ambient');
    expect(idsWith(pitch('90 kPa'), set('hold-factor: 3,', 'hold-factor: 3, air-pressure: 89 kPa,'))).toContain(
      'vacuum-over-ambient',
    );
  });

  test('factor, friction and side force are asked for, never guessed', () => {
    expect(idsWith(set(' hold-factor: 3,', ''))).toContain('number-not-derivable');
    expect(idsWith(set('    vacuum: { interlock: 70 kPa, friction: 0.35 }\n', ''))).toContain('number-not-derivable');
    expect(idsWith(set('    side-force: 160 N\n', ''))).toContain('number-not-derivable');
    expect(idsWith(set('hold-factor: 3', 'hold-factor: 2'))).toEqual([]);
    expect(idsWith(set('hold-factor: 3', 'hold-factor: 1.9'))).toContain('hold-factor-small');
  });
});

test('what is lifted off holds nothing sideways', () => {
  const hold = { force: 1000, friction: 0.3, factor: 2 };
  expect(heldSideways({ ...hold, lift: 0 })).toBeCloseTo(150, 9);
  expect(heldSideways({ ...hold, lift: 400 })).toBeCloseTo(90, 9);
  expect(heldSideways({ ...hold, lift: 1200 })).toBe(0);
});

describe('against a slow count', () => {
  const outline = valueOf(facts, 'outline.polygon');
  const chance = seeded(20_261_127);
  const between = (low: number, high: number) => low + chance.next() * (high - low);
  const rectangle = (): Polygon => {
    const made = shapePolygon(
      { kind: 'rectangle', lengthMm: between(40, 160), widthMm: between(30, 120), cornerMm: between(2, 14) },
      { xMm: between(-130, 130), yMm: between(-190, 200), angleDeg: between(0, 180) },
    );
    if (!made.ok) throw new Error(made.what);
    return made.polygon;
  };

  test('area under the body: places of a grid that lie in both', () => {
    for (let i = 0; i < 40; i++) {
      const zone = rectangle();
      let count = 0;
      for (let x = -159.5; x < 160; x++)
        for (let y = -219.5; y < 240; y++) if (contains(zone, x, y) && contains(outline, x, y)) count++;
      const area = regionArea(intersection([zone], [outline]));
      // A line through a grid of 1 mm is off by a little for each mm of its length, now more and now less.
      expect(Math.abs(area - count)).toBeLessThan(60);
    }
  });

  test('a gasket leaks where a place of it lies off the body or over a hollow, and only there', () => {
    let [sealed, leaking] = [0, 0];
    for (let i = 0; i < 60; i++) {
      const inside = rectangle();
      const gasketMm = between(4, 9);
      const edge = banded([inside]);
      const made = shapePolygon(
        { kind: 'circle', diameterMm: between(6, 40) },
        { xMm: between(-120, 120), yMm: between(-180, 200) },
      );
      if (!made.ok) throw new Error(made.what);
      const mouth = made.polygon;
      let [off, over] = [0, 0];
      const { minX, maxX, minY, maxY } = bounds(inside)!;
      for (let x = minX - 10; x < maxX + 10; x += 0.7)
        for (let y = minY - 10; y < maxY + 10; y += 0.7) {
          if (contains(inside, x, y) || !edge.edgeIsNearer(x, y, gasketMm)) continue;
          if (!contains(outline, x, y)) off++;
          if (contains(mouth, x, y)) over++;
        }
      const leaks = leaksOf(zonePlace(inside, gasketMm), {
        outline,
        awayMm: () => 0,
        mouths: [{ id: 'a', region: [mouth] }],
      }).map(({ kind }) => kind);
      // A few places of the grid are within its own fineness.
      if (off > 8 || off === 0) expect(leaks.includes('edge')).toBe(off > 0);
      if (over > 8 || over === 0) expect(leaks.includes('mouth')).toBe(over > 0);
      if (leaks.length === 0) sealed++;
      else leaking++;
    }
    expect(Math.min(sealed, leaking)).toBeGreaterThan(5);
  }, 60_000);

  test('air comes by whatever way there is, with the first step that makes one', () => {
    const place = (x: number) => {
      const made = shapePolygon({ kind: 'circle', diameterMm: 20 }, { xMm: x, yMm: 0 });
      if (!made.ok) throw new Error(made.what);
      return made.polygon;
    };
    const zones = [0, 100, 200].map((x, i) => ({ id: `zone-${i}`, place: zonePlace(place(x), 5) }));
    let found = 0;
    for (let round = 0; round < 400; round++) {
      const hollows = Array.from({ length: 9 }, (_, i): Hollow => {
        const from = chance.whole(6) - 1;
        const x = chance.pick([undefined, undefined, undefined, 0, 100, 200, 300]);
        return {
          id: `hollow-${i}`,
          from,
          air: chance.next() < 0.15 ? { from: Math.max(from, chance.whole(5)), way: 'face' } : undefined,
          mouth: x === undefined ? undefined : [place(x)],
          meets: Array.from({ length: 9 }, (_b, b) => `hollow-${b}`).filter((_b, b) => b < i && chance.next() < 0.14),
        };
      });
      const opened = openedBy(zones, hollows);
      for (const [i, { id }] of zones.entries()) expect(opened.get(id)?.step).toBe(slowly(hollows, i * 100, place));
      found += opened.size;
    }
    expect(found).toBeGreaterThan(200);
  });
});

/** Each step anew: whatever touches what has air gets it, until nothing more does. */
function slowly(hollows: readonly Hollow[], x: number, place: (x: number) => Polygon): number | undefined {
  const at = (mouth: Hollow['mouth']) => (mouth ? [0, 100, 200].find((z) => mouth[0]![0] === place(z)[0]) : undefined);
  for (let step = -1; step < 6; step++) {
    const there = hollows.filter(({ from }) => from <= step);
    const aired = new Set<string | number>();
    for (const { id, air, mouth } of there) {
      if ((air && air.from <= step) || (mouth && !air && at(mouth) === undefined)) aired.add(id);
    }
    for (let before = -1; before < aired.size;) {
      before = aired.size;
      for (const hollow of there) {
        const zone = at(hollow.mouth);
        if (zone !== undefined && aired.has(hollow.id)) aired.add(zone);
        const touches = there.some(
          (other) => aired.has(other.id) && (other.meets.includes(hollow.id) || hollow.meets.includes(other.id)),
        );
        if (touches || (zone !== undefined && aired.has(zone))) aired.add(hollow.id);
      }
    }
    if (aired.has(x)) return step;
  }
  return undefined;
}
