import Qty from 'js-quantities';
import { expect, test } from 'vitest';
import { UNITS, findUnit, unitById, unitsOf } from '../../src/units/unit.ts';

/**
 * Every factor against an independent general-purpose unit library: [our unit, its spelling, its unit for our base,
 * relative difference allowed]. 1e-12 unless its own constant is short, and then the constant stands beside it.
 */
const PAIRS: readonly (readonly [string, string, string, number])[] = [
  ['mm', '1 mm', 'nm', 1e-12],
  ['cm', '1 cm', 'nm', 1e-12],
  ['m', '1 m', 'nm', 1e-12],
  ['µm', '1 um', 'nm', 1e-12],
  ['in', '1 in', 'nm', 1e-12],
  ['thou', '1 mil', 'nm', 1e-12],
  ['ft', '1 ft', 'nm', 1e-12],
  ['deg', '1 deg', 'deg', 1e-12],
  ['s', '1 s', 's', 1e-12],
  ['min', '1 min', 's', 1e-12],
  ['h', '1 h', 's', 1e-12],
  ['d', '1 day', 's', 1e-12],
  ['g', '1 g', 'kg', 1e-12],
  ['kg', '1 kg', 'kg', 1e-12],
  ['oz', '1 oz', 'kg', 1e-8], // its ounce is 0.0283495231 kg, exact 0.028349523125
  ['lb', '1 lb', 'kg', 1e-12],
  ['N', '1 N', 'N', 1e-12],
  ['kN', '1 kN', 'N', 1e-12],
  ['lbf', '1 lbf', 'N', 1e-6], // its pound-force is 4.448222 N, exact 4.4482216152605
  ['Pa', '1 Pa', 'Pa', 1e-12],
  ['kPa', '1 kPa', 'Pa', 1e-12],
  ['MPa', '1 MPa', 'Pa', 1e-12],
  ['bar', '1 bar', 'Pa', 1e-12],
  ['psi', '1 psi', 'Pa', 1e-6], // its psi is 6894.76 Pa, exact 6894.757293…
  ['inHg', '1 inHg', 'Pa', 1e-6], // its inch of mercury is 3386.3881472 Pa, conventional 3386.388640
  ['Δ°C', '1 degC', 'degK', 1e-12],
  ['Δ°F', '1 degF', 'degK', 1e-12],
  ['m/min', '1 m/min', 'm/s', 1e-12],
  ['mm/min', '1 mm/min', 'm/s', 1e-12],
  ['m/s', '1 m/s', 'm/s', 1e-12],
  ['in/min', '1 in/min', 'm/s', 1e-12],
  ['ft/min', '1 ft/min', 'm/s', 1e-12],
  ['rpm', '1 rpm', 'rpm', 1e-12],
  ['g/m²', '1 g/m2', 'kg/m2', 1e-12],
  ['lb/1000ft²', '0.001 lb/ft2', 'kg/m2', 1e-12],
  ['m²', '1 m2', 'm2', 1e-12],
  ['cm²', '1 cm2', 'm2', 1e-12],
  ['mm²', '1 mm2', 'm2', 1e-12],
  ['in²', '1 in2', 'm2', 1e-12],
  ['ft²', '1 ft2', 'm2', 1e-12],
  ['bf', '144 in3', 'm3', 1e-12],
  ['m³', '1 m3', 'm3', 1e-12],
  ['cm³', '1 cm3', 'm3', 1e-12],
  ['in³', '1 in3', 'm3', 1e-12],
  ['kg/m³', '1 kg/m3', 'kg/m3', 1e-12],
  ['W', '1 W', 'W', 1e-12],
  ['kW', '1 kW', 'W', 1e-12],
  ['W/cm²', '1 W/cm2', 'W/m2', 1e-12],
  ['W/in²', '1 W/in2', 'W/m2', 1e-12],
  ['lb/ft³', '1 lb/ft3', 'kg/m3', 1e-12],
];

test.each(PAIRS)('%s against %s in %s', (ours, theirs, base, relative) => {
  const expected = Qty(theirs).to(base).scalar;
  expect(Math.abs(unitById(ours).toBase(1) / expected - 1)).toBeLessThanOrEqual(relative);
});

test.each([
  ['°C', 'tempC'],
  ['°F', 'tempF'],
])('%s against %s', (ours, theirs) => {
  for (const t of [-40, 0, 21.5, 140]) {
    expect(unitById(ours).toBase(t)).toBeCloseTo(Qty(`${t} ${theirs}`).to('tempK').scalar, 9);
  }
});

test('no unit is left out: those without a pair are temperatures, percent and the count', () => {
  const paired = new Set(PAIRS.map(([id]) => id));
  expect(UNITS.map((u) => u.id).filter((id) => !paired.has(id))).toEqual(['°C', '°F', '%', '']);
});

test('every spelling names one unit only, and leads to it', () => {
  for (const unit of UNITS) for (const spelling of unit.spellings) expect(findUnit(` ${spelling} `)?.id).toBe(unit.id);
});

test('there and back', () => {
  for (const unit of UNITS) expect(unit.fromBase(unit.toBase(12.34))).toBeCloseTo(12.34, 9);
  expect(unitsOf('spread').map((u) => u.id)).toEqual(['g/m²', 'lb/1000ft²']);
});

test('lengths have whole factors in nanometres', () => {
  for (const unit of unitsOf('length')) expect([Number.isInteger(unit.num), unit.den]).toEqual([true, 1]);
});
