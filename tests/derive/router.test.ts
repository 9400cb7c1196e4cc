/** Steps, paths and times of the sample at its router, worked out again by hand. */
import { expect, test } from 'vitest';
import { checkAll } from '../../src/compile.ts';
import type { Facts } from '../../src/facts/facts.ts';
import { memoryHost } from '../../src/host/memory.ts';
import { edgeLine } from '../../src/geometry/solid/edge-line.ts';
import { levelAreas } from '../../src/geometry/solid/levels.ts';
import { arch, bevel, FLAT, steepestOf } from '../../src/geometry/solid/profile.ts';
import type { Edit } from '../cases/workspace.ts';
import { edited, sample } from '../cases/workspace.ts';
import { valueOf } from './subject.ts';

const checked = (...edits: readonly Edit[]) =>
  checkAll(memoryHost(edits.length > 0 ? edited(edits) : sample()), '2026-11-25').models[0]!;
const factsWith = (...edits: readonly Edit[]): Facts => checked(...edits).hands[0]!.facts;
const plant = 'models/plant/plant.yaml';

const facts = factsWith();
const seconds = (id: `run.${string}.time`, from: Facts = facts): number => valueOf(from, id)!.value;

test('a pocket: area over the step over at each level, and down at the plunge', () => {
  // 60 × 34 less four corners of 6: 2040 − (4 − π)·36 = 2009.1 mm². 15.6 deep at most, in steps of 6: three.
  const areaMm2 = 60 * 34 - (4 - Math.PI) * 36;
  expect(valueOf(facts, 'run.cavity.battery.downs').value).toBe(3);
  // 4 m/min along, 1.5 m/min down.
  expect(seconds('run.cavity.battery.time')).toBeCloseTo((3 * areaMm2) / 6 / (4000 / 60) + 15.6 / (1500 / 60), 1);
});

test('without a plunge it runs in at its feed', () => {
  const slow = factsWith({ file: plant, find: 'feed: 4 m/min\n    plunge: 1.5 m/min', replace: 'feed: 4 m/min' });
  const areaMm2 = 60 * 34 - (4 - Math.PI) * 36;
  expect(seconds('run.cavity.battery.time', slow)).toBeCloseTo(((3 * areaMm2) / 6 + 15.6) / (4000 / 60), 1);
});

test('a hole: straight down at its feed, as deep as it may be', () => {
  // 12.5 mm at 1.2 m/min.
  expect(seconds('run.hole.tooling-hole-a.time')).toBeCloseTo(12.5 / 20, 6);
  expect(valueOf(facts, 'run.back.drilling.d-8')!.value).toBeCloseTo((2 * 12.5) / 20, 6);
  expect(valueOf(facts, 'run.top.drilling.d-8')).toBeUndefined();
});

test('the perimeter: half the body from each side, once round for each step', () => {
  // 49.72 ÷ 2 = 24.86, in steps of 8: four.
  expect(valueOf(facts, 'run.back.perimeter.downs').value).toBe(4);
  const { value } = valueOf(facts, 'run.back.perimeter.path');
  const roundMm = (value / 1e6 - 24.86) / 4 - Math.PI * 16;
  // The outline is 300 × 420 with rounded ends: between the box and an ellipse in it.
  expect(roundMm).toBeGreaterThan(1140);
  expect(roundMm).toBeLessThan(1440);
});

test('what is drilled by hand takes no time of the machine and no place in a spindle', () => {
  expect(valueOf(facts, 'run.channel.pickup-wire.time')).toBeUndefined();
  // Back: facing, 16, 12, drill 8, drill 4.5, drill of the pilots. Top: ball, 16, 8, 12, drill 9.5, drill 11, drill 4.5.
  expect(valueOf(facts, 'run.back.changes').value).toBe(6);
  expect(valueOf(facts, 'run.top.changes').value).toBe(7);
});

test('the sum: a quarter more for moves above the wood, twelve seconds a change', () => {
  const parts = ['back.face', 'back.perimeter', 'cavity.controls', 'cavity.battery', 'cavity.controls-cover'] as const;
  const holes = ['hole.tooling-hole-a', 'hole.tooling-hole-b', 'hole.neck-screw', 'hole.cover-pilot'] as const;
  const sum = [...parts, ...holes].reduce((total, key) => total + seconds(`run.${key}.time`), 0);
  expect(valueOf(facts, 'run.back.cutting').value).toBeCloseTo(sum, 9);
  expect(valueOf(facts, 'run.back.estimate').value).toBeCloseTo(sum * 1.25 + 6 * 12, 9);
});

test('two spindles: half the machine’s time a body, all of the load and unload', () => {
  // 6 min by the clock; 90 s and 45 s by hand.
  expect(valueOf(facts, 'run.back.machine').value).toBe(360);
  expect(valueOf(facts, 'run.back.body.one').value).toBe(360 + 135);
  expect(valueOf(facts, 'run.back.body.all').value).toBe(180 + 135);
  const unclocked = factsWith({ file: 'models/tarn.yaml', find: '    cycle: 6 min\n', replace: '' });
  expect(valueOf(unclocked, 'run.back.machine').value).toBe(valueOf(unclocked, 'run.back.estimate').value);
});

test('a plain top takes about a third of an arched one, or less; plausibility only', () => {
  const carve = seconds('run.top.carve.time');
  // As a facing cutter would go over the same area at its own step over and feed.
  const faced = seconds('run.back.face.time');
  expect(faced * 3).toBeLessThan(carve);
});

test('levels of a bevel: a square of 100 with 10 level and 10 up, 2 above it, in steps of 3', () => {
  const outline = Float64Array.from([0, 0, 100, 0, 100, 100, 0, 100]);
  const edge = edgeLine(outline, true);
  const face = { riseMm: 4, contours: [], edge, roundMm: 0, ledge: undefined };
  const shaped = { ...face, carve: { from: edge, profile: bevel(10, 10) } };
  const [first, second, ...more] = levelAreas(shaped, outline, { overMm: 2, stepMm: 3 });
  // Deeper than 1 below the plane: up to 17.5 from the edge.
  expect(first).toBeCloseTo(10_000, 6);
  expect(second! / (10_000 - (100 - 35) ** 2)).toBeCloseTo(1, 1);
  expect(more).toEqual([]);
  const flat = { ...face, riseMm: 0, carve: { from: edge, profile: FLAT } };
  expect(levelAreas(flat, outline, { overMm: 0, stepMm: 3 })).toEqual([]);
  expect(levelAreas(flat, outline, { overMm: 3, stepMm: 3 })).toHaveLength(1);
});

test('the steepest place and the roundest of a profile', () => {
  const { slope, bendPerMm } = steepestOf(arch({ landMm: 11, recurve: { atMm: 26, depthMm: 0.8 }, crownMm: 95 }), 4.2);
  // Out of the hollow: 4.2 + 0.8 over 69. Into it, its edge bulges most: 0.8 over 15.
  expect(slope).toBeCloseTo((Math.PI * 5) / (2 * 69), 12);
  expect(bendPerMm).toBeCloseTo((Math.PI ** 2 * 0.8) / (2 * 15 ** 2), 12);
  expect(steepestOf(bevel(2, 16), 4)).toEqual({ slope: 0.25, bendPerMm: 0 });
});

test('cusps of the carve: a ball of 20 every 1.5 mm', () => {
  expect(valueOf(facts, 'cusp.carve.level').value).toBe(Math.round((10 - Math.sqrt(100 - 0.75 ** 2)) * 1e6));
  const most = valueOf(facts, 'cusp.carve.most').value;
  // The bend of the hollow’s edge: s²/8 · (1/R + 1/ρ), within a per cent.
  const near = (1.5 ** 2 / 8) * (1 / 10 + (Math.PI ** 2 * 0.8) / (2 * 15 ** 2)) * 1e6;
  expect(most / near).toBeCloseTo(1, 2);
});

test('a retired cutter is named with the nearest in use that would do', () => {
  const at = (title: string) =>
    checked({ file: plant, find: `title: ${title}\n`, replace: `title: ${title}\n    retired: 2026-01-05\n` });
  const mends = (title: string) =>
    at(title)
      .findings.filter(({ id }) => id === 'row-retired')
      .map(({ mend }) => mend);
  // The cover’s seat is shallow enough for the end mill 8.
  expect(mends('End mill 12').some((mend) => mend.includes('mill-8'))).toBe(true);
  // Nothing is as thin as 8 and reaches as deep.
  expect(mends('End mill 8').every((mend) => mend.startsWith('Name another one'))).toBe(true);
  expect(mends('Drill 11').every((mend) => mend.startsWith('Name another one'))).toBe(true);
});
