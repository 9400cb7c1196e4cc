/** Gauge of a press and pressure a wood bears against published rows; source and certainty stand in check-values.json. */
import { expect, test } from 'vitest';
import { bodyForce, gaugeOf } from '../../src/derive/press-load.ts';
import { alongDensity, HIGHEST_DENSITY, LOW_DENSITY } from '../../src/reference/joint-pressure.ts';
import { unitById } from '../../src/units/unit.ts';
import { row } from './rows.ts';

/** In one unit of length and one of pressure, whichever they are, as long as both go in and come out the same. */
function gauge(id: string, [pressure, sides, bore]: readonly [string, string, string], lengthM: number, unit: string) {
  const { inputs } = row(id);
  const [a, b] = inputs[sides] as [number, number];
  const pa = unitById(unit).toBase(Number(inputs[pressure]));
  const jointArea = a * lengthM * (b * lengthM);
  const force = bodyForce({ name: id, jointArea, pressure: { low: pa, high: pa } });
  const shown = gaugeOf(force, { count: Number(inputs['n']), bore: Number(inputs[bore]) * lengthM });
  return unitById(unit).fromBase(shown.low);
}

const off = (id: string, found: number) => Math.abs(found - Number(row(id).expected));

test('press.in: two rams of 4 in, a joint of 14 × 20 in', () => {
  const found = gauge('press.in', ['p_joint_psi', 'joint_in', 'bore_in'], 0.0254, 'psi');
  expect(off('press.in', found)).toBeLessThanOrEqual(Number(row('press.in').tolerance));
});

test('press.si: two rams of 100 mm, a joint of 360 × 500 mm', () => {
  const found = gauge('press.si', ['p_joint_MPa', 'joint_m', 'bore_m'], 1, 'MPa');
  expect(off('press.si', found)).toBeLessThanOrEqual(Number(row('press.si').tolerance));
});

test.each([
  ['clamp.lo', LOW_DENSITY],
  ['clamp.hi', HIGHEST_DENSITY],
] as const)('%s: the handbook’s two units say the same, to its own rounding', (id, { pressureKPa, density }) => {
  const kPa = unitById('kPa').fromBase(unitById('psi').toBase(Number(row(id).inputs['psi'])));
  expect(off(id, kPa)).toBeLessThanOrEqual(Number(row(id).tolerance));
  // Printed as 700 kPa (100 lb/in²) and 1,700 kPa (247 lb/in²): the metric number is rounded.
  expect(Math.abs(pressureKPa - kPa)).toBeLessThan(11);
  expect(alongDensity(density)).toBe(id === 'clamp.lo' ? 0 : 1);
});

test('beyond the ends of the line a wood bears no less and no more than at them', () => {
  expect(alongDensity(100)).toBe(0);
  expect(alongDensity(2000)).toBe(1);
  expect(alongDensity((LOW_DENSITY.density + HIGHEST_DENSITY.density) / 2)).toBe(0.5);
});
