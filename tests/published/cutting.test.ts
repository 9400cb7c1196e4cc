/** Cusps, chips and speeds of cutters against published rows; source and certainty stand in check-values.json. */
import { describe, expect, test } from 'vitest';
import { chipLoad, chipShare, engagement, surfaceSpeed, turnsFor } from '../../src/derive/chips.ts';
import { cuspOnBend, cuspOnPlane, stepOfBall } from '../../src/geometry/cusp.ts';
import { chipLoadBandIn } from '../../src/reference/chip-load.ts';
import { unitById } from '../../src/units/unit.ts';
import { row } from './rows.ts';

const input = (id: string, name: string): number => Number(row(id).inputs[name]);
const off = (id: string, found: number) => Math.abs(found - Number(row(id).expected));
const tolerance = (id: string) => Number(row(id).tolerance);
const rad = (degrees: number): number => (degrees * Math.PI) / 180;
const ball = (radiusMm: number) => ({ radiusMm, cornerMm: radiusMm });

describe('cusps of a ball', () => {
  test.each(['cusp.flat', 'cusp.in2', 'cusp.incl15', 'cusp.incl45', 'cusp.incl60'])('%s', (id) => {
    const slope = rad(Number(row(id).inputs['alpha_deg'] ?? 0));
    const found = cuspOnPlane(ball(input(id, 'R')), input(id, 's'), slope);
    expect(off(id, found)).toBeLessThanOrEqual(tolerance(id));
  });

  test('30° lies between, as the same circles cross: 0.013921 [recomputed]', () => {
    expect(cuspOnPlane(ball(3), 0.5, rad(30))).toBeCloseTo(0.013921, 6);
  });

  test('cusp.convex: on a bulge and in a hollow, exact; the published rule is near it', () => {
    const id = 'cusp.convex';
    const [r, s, rho] = ['R', 's', 'rho'].map((name) => input(id, name)) as [number, number, number];
    const exact = /exact circle values ([\d.]+) \/ ([\d.]+)/.exec(row(id).source)!.slice(1).map(Number);
    const near = row(id).expected as [number, number];
    [1, -1].forEach((side, i) => {
      const found = cuspOnBend(r, s, side / rho);
      expect(Math.abs(found - exact[i]!)).toBeLessThan(1.5e-6);
      expect(found / near[i]!).toBeCloseTo(1, 2);
      expect(near[i]).toBeCloseTo((s * s * (1 / r + side / rho)) / 8, 6);
    });
  });

  test('the step that leaves so much: R 3, cusp 0.005 → 0.3463 [seen 0.346], and back on any slope', () => {
    expect(stepOfBall(3, 0.005, 0)).toBeCloseTo(0.3463, 4);
    for (const degrees of [0, 7, 30, 55]) {
      const step = stepOfBall(10, 0.03, rad(degrees));
      expect(cuspOnPlane(ball(10), step, rad(degrees))).toBeCloseTo(0.03, 9);
    }
  });
});

describe('other ends', () => {
  test('a flat end leaves nothing on the level, up to its flat', () => {
    expect(cuspOnPlane({ radiusMm: 30, cornerMm: 0 }, 42, 0)).toBeCloseTo(0, 9);
    expect(cuspOnPlane({ radiusMm: 10, cornerMm: 2 }, 16, 0)).toBeCloseTo(0, 9);
    expect(cuspOnPlane({ radiusMm: 10, cornerMm: 2 }, 17, 0)).toBeGreaterThan(0.05);
  });

  test('a sharp one leaves a stair on a slope: s · sin α', () => {
    expect(cuspOnPlane({ radiusMm: 8, cornerMm: 0 }, 3, rad(14))).toBeCloseTo(3 * Math.sin(rad(14)), 9);
  });

  test('a round end in between, against points of both ends, densely laid', () => {
    const end = { radiusMm: 8, cornerMm: 2 };
    const [step, slope] = [1.5, rad(20)];
    const shape = (u: number) => {
      const beyond = Math.max(0, Math.abs(u) - (end.radiusMm - end.cornerMm));
      return beyond > end.cornerMm ? Infinity : end.cornerMm - Math.sqrt(end.cornerMm ** 2 - beyond ** 2);
    };
    let [lowest, highest] = [Infinity, -Infinity];
    for (let x = 0; x < step; x += step / 20_000) {
      let z = Infinity;
      for (let i = -12; i <= 12; i++) z = Math.min(z, i * step * Math.tan(slope) + shape(x - i * step));
      const over = (z - x * Math.tan(slope)) * Math.cos(slope);
      [lowest, highest] = [Math.min(lowest, over), Math.max(highest, over)];
    }
    expect(cuspOnPlane(end, step, slope)).toBeCloseTo(highest - lowest, 3);
  });

  test('paths that do not meet leave all of it', () => {
    expect(cuspOnPlane(ball(3), 6, 0)).toBe(Infinity);
    expect(cuspOnBend(10, 1, -1 / 9)).toBe(Infinity);
  });
});

test('eng.straight: the share of its turn that an edge is in the wood', () => {
  const { inputs, expected } = row('eng.straight');
  (inputs['ae'] as number[]).forEach((over, i) => {
    expect(Math.abs(engagement(over, Number(inputs['D'])) - (expected as number[])[i]!)).toBeLessThanOrEqual(
      tolerance('eng.straight'),
    );
  });
});

test('the chip is thinned below a quarter turn: 60° → .866, 36.87° → .600 [recomputed], 2√(a/D·(1 − a/D))', () => {
  for (const over of [3.175, 1.27, 0.5]) {
    const part = over / 12.7;
    expect(chipShare(engagement(over, 12.7))).toBeCloseTo(2 * Math.sqrt(part * (1 - part)), 12);
  }
  expect(chipShare(engagement(3.175, 12.7))).toBeCloseTo(0.866, 3);
  expect(chipShare(engagement(1.27, 12.7))).toBeCloseTo(0.6, 3);
  expect(chipShare(engagement(9, 12.7))).toBe(1);
});

test.each([
  ['feed.mm', 'mm/min', 'fz_mm', 'mm'],
  ['feed.in', 'in/min', 'fz_in', 'in'],
])('%s: F = n·z·f, read back as the chip load', (id, speed, chip, length) => {
  const feed = unitById(speed).toBase(Number(row(id).expected));
  const found = chipLoad(feed, input(id, 'n'), input(id, 'z'));
  expect(found / (unitById(length).toBase(input(id, chip)) / 1e9)).toBeCloseTo(1, 12);
});

test('rpm.in: turns for 1000 ft/min at 1/2 in', () => {
  const found = turnsFor(unitById('ft/min').toBase(input('rpm.in', 'v_ft_min')), input('rpm.in', 'D_in') * 0.0254);
  expect(off('rpm.in', found)).toBeLessThanOrEqual(tolerance('rpm.in'));
});

test('rpm.mm: turns for 300 m/min at 12 mm, and 18 000 rpm at 1/2 in is 11.97 m/s [recomputed]', () => {
  const found = turnsFor(input('rpm.mm', 'v_m_min') / 60, input('rpm.mm', 'D_mm') / 1000);
  expect(off('rpm.mm', found)).toBeLessThanOrEqual(tolerance('rpm.mm'));
  expect(surfaceSpeed(0.0127, 18_000)).toBeCloseTo(11.97, 2);
});

test('generic chip load in hardwood, as trade pages print it [seen]; between the rows the line, below them nothing', () => {
  expect(chipLoadBandIn(1 / 4)).toEqual({ low: 0.003, high: 0.005 });
  expect(chipLoadBandIn(1 / 2)).toEqual({ low: 0.004, high: 0.008 });
  expect(chipLoadBandIn(3 / 4)).toEqual({ low: 0.006, high: 0.012 });
  expect(chipLoadBandIn(3)).toEqual({ low: 0.006, high: 0.012 });
  expect(chipLoadBandIn(3 / 8)!.low).toBeCloseTo(0.0035, 12);
  expect(chipLoadBandIn(3 / 8)!.high).toBeCloseTo(0.0065, 12);
  expect(chipLoadBandIn(0.2)).toBeUndefined();
});
