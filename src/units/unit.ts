import type { Kind } from './quantity.ts';

/**
 * The units people may write and cards may print. One base unit of the kind = `den / num` of this unit; all factors are
 * the exact definitions (NIST SP 811 app. B.8), inHg its conventional value. Lengths have `den` 1 and a whole `num` in
 * nanometres, so conversion is whole-number arithmetic.
 */
export interface Unit {
  /** Permanent id, as it stands in `Quantity.unit`. */
  readonly id: string;
  readonly kind: Kind;
  /** As printed after a number. */
  readonly symbol: string;
  readonly system: System;
  readonly num: number;
  readonly den: number;
  /** Added to a number in this unit before scaling: 273.15 for °C, 0 where both zeros meet. */
  readonly offset: number;
  /** All ways to write it, id and symbol among them. Case matters: `mPa` is not `MPa`. */
  readonly spellings: readonly string[];
  /** A number in this unit to the base unit; nearest double (exact for a length that is whole in nm). */
  readonly toBase: (x: number) => number;
  /** A number in the base unit to this unit. */
  readonly fromBase: (v: number) => number;
}

export type System = 'metric' | 'inch' | 'any';

const LB_KG = 0.45359237;
const LBF_N = 4.4482216152605;
const IN2_M2 = 0.00064516;

function unit(
  [kind, system, id, symbol]: readonly [Kind, System, string, string],
  [num, den, offset]: readonly [number, number, number],
  also: readonly string[],
): Unit {
  const spellings = [...new Set([id, symbol, ...also])];
  const toBase = (x: number) => ((x + offset) * num) / den;
  const fromBase = (v: number) => (v * den) / num - offset;
  return { id, kind, symbol, system, num, den, offset, spellings, toBase, fromBase };
}

/** Spellings of a power: `in²` also as `in2`, `in^2`, `sq in`. */
function squares(length: string): string[] {
  return [`${length}2`, `${length}^2`, `sq ${length}`];
}

const LENGTHS = [
  unit(['length', 'metric', 'mm', 'mm'], [1e6, 1, 0], []),
  unit(['length', 'metric', 'cm', 'cm'], [1e7, 1, 0], []),
  unit(['length', 'metric', 'm', 'm'], [1e9, 1, 0], []),
  // Both the micro sign (U+00B5) and the Greek letter (U+03BC) are met on keyboards.
  unit(['length', 'metric', 'µm', 'µm'], [1e3, 1, 0], ['\u03bcm', 'um', 'micron', 'microns']),
  unit(['length', 'inch', 'in', 'in'], [25_400_000, 1, 0], ['"', '″', '”', 'inch', 'inches']),
  unit(['length', 'inch', 'thou', 'thou'], [25_400, 1, 0], ['mil', 'mils', 'thous']),
  unit(['length', 'inch', 'ft', 'ft'], [304_800_000, 1, 0], ["'", '′', '’', 'foot', 'feet']),
];

const ANGLES_AND_TIMES = [
  unit(['angle', 'any', 'deg', '°'], [1, 1, 0], ['degree', 'degrees']),
  unit(['time', 'any', 's', 's'], [1, 1, 0], ['sec', 'second', 'seconds']),
  unit(['time', 'any', 'min', 'min'], [60, 1, 0], ['mins', 'minute', 'minutes']),
  unit(['time', 'any', 'h', 'h'], [3600, 1, 0], ['hr', 'hrs', 'hour', 'hours']),
  unit(['time', 'any', 'd', 'd'], [86_400, 1, 0], ['day', 'days']),
];

const MASSES_FORCES_PRESSURES = [
  unit(['mass', 'metric', 'g', 'g'], [1, 1000, 0], ['gram', 'grams']),
  unit(['mass', 'metric', 'kg', 'kg'], [1, 1, 0], []),
  unit(['mass', 'inch', 'oz', 'oz'], [LB_KG, 16, 0], ['ounce', 'ounces']),
  unit(['mass', 'inch', 'lb', 'lb'], [LB_KG, 1, 0], ['lbs', 'pound', 'pounds']),
  unit(['force', 'metric', 'N', 'N'], [1, 1, 0], []),
  unit(['force', 'metric', 'kN', 'kN'], [1000, 1, 0], []),
  unit(['force', 'inch', 'lbf', 'lbf'], [LBF_N, 1, 0], []),
  unit(['pressure', 'metric', 'Pa', 'Pa'], [1, 1, 0], []),
  unit(['pressure', 'metric', 'kPa', 'kPa'], [1e3, 1, 0], []),
  unit(['pressure', 'metric', 'MPa', 'MPa'], [1e6, 1, 0], ['N/mm²', 'N/mm2']),
  unit(['pressure', 'metric', 'bar', 'bar'], [1e5, 1, 0], []),
  unit(['pressure', 'inch', 'psi', 'psi'], [LBF_N, IN2_M2, 0], ['lbf/in²', 'lbf/in2']),
  // Conventional inch of mercury at 0 °C: 3.386 388 640 kPa; SP 811 prints 3.386 389.
  unit(['pressure', 'inch', 'inHg', 'inHg'], [3386.38864, 1, 0], ['in Hg', 'inhg']),
];

// A difference is a kind of its own, because 2 °C is 36 °F but a difference of 2 °C is one of 3.6 °F.
const TEMPERATURES = [
  unit(['temperature', 'metric', '°C', '°C'], [1, 1, 273.15], ['degC', 'C', '℃']),
  unit(['temperature', 'inch', '°F', '°F'], [5, 9, 459.67], ['degF', 'F', '℉']),
  unit(['temperature-difference', 'metric', 'Δ°C', 'Δ°C'], [1, 1, 0], ['K', 'degC-diff', 'ΔC', '∆°C']),
  unit(['temperature-difference', 'inch', 'Δ°F', 'Δ°F'], [5, 9, 0], ['degF-diff', 'ΔF', '∆°F']),
];

const RATES = [
  unit(['fraction', 'any', '%', '%'], [1, 100, 0], ['percent']),
  unit(['speed', 'metric', 'm/min', 'm/min'], [1, 60, 0], []),
  unit(['speed', 'metric', 'mm/min', 'mm/min'], [1, 60_000, 0], []),
  unit(['speed', 'metric', 'm/s', 'm/s'], [1, 1, 0], []),
  unit(['speed', 'inch', 'in/min', 'in/min'], [0.0254, 60, 0], ['ipm']),
  unit(['speed', 'inch', 'ft/min', 'ft/min'], [0.3048, 60, 0], ['fpm', 'sfm']),
  unit(['rotation', 'any', 'rpm', 'rpm'], [1, 1, 0], ['1/min', '/min', 'r/min', 'min⁻¹']),
  unit(['spread', 'metric', 'g/m²', 'g/m²'], [1, 1000, 0], ['g/m2', 'g/m^2', 'gsm']),
  unit(['spread', 'inch', 'lb/1000ft²', 'lb/1000 ft²'], [LB_KG, 92.90304, 0], spreadSpellings()),
];

function spreadSpellings(): string[] {
  const area = ['1000ft2', '1000 ft2', '1000 sq ft', '1000sqft'];
  return [...area.flatMap((a) => [`lb/${a}`, `lb per ${a}`]), 'lb per 1000 ft²', 'lb/msf', 'lb/MSGL'];
}

const AREAS_AND_VOLUMES = [
  unit(['area', 'metric', 'm²', 'm²'], [1, 1, 0], squares('m')),
  unit(['area', 'metric', 'cm²', 'cm²'], [1, 1e4, 0], squares('cm')),
  unit(['area', 'metric', 'mm²', 'mm²'], [1, 1e6, 0], squares('mm')),
  unit(['area', 'inch', 'in²', 'in²'], [IN2_M2, 1, 0], squares('in')),
  unit(['area', 'inch', 'ft²', 'ft²'], [0.09290304, 1, 0], squares('ft')),
  // Board foot: 144 in³.
  unit(['timber-volume', 'inch', 'bf', 'bf'], [0.002359737216, 1, 0], ['bd ft', 'board foot', 'board feet']),
  unit(['timber-volume', 'metric', 'm³', 'm³'], [1, 1, 0], ['m3', 'm^3']),
  unit(['volume', 'metric', 'cm³', 'cm³'], [1, 1e6, 0], ['cm3', 'cm^3', 'cc']),
  unit(['volume', 'inch', 'in³', 'in³'], [0.000016387064, 1, 0], ['in3', 'in^3', 'cu in']),
  unit(['density', 'metric', 'kg/m³', 'kg/m³'], [1, 1, 0], ['kg/m3', 'kg/m^3']),
  unit(['density', 'inch', 'lb/ft³', 'lb/ft³'], [LB_KG, 0.028316846592, 0], ['lb/ft3', 'lb/ft^3', 'lb/cu ft']),
];

const POWERS = [
  unit(['power', 'any', 'W', 'W'], [1, 1, 0], []),
  unit(['power', 'any', 'kW', 'kW'], [1000, 1, 0], []),
  unit(['power-density', 'metric', 'W/cm²', 'W/cm²'], [1e4, 1, 0], ['W/cm2', 'W/cm^2']),
  unit(['power-density', 'inch', 'W/in²', 'W/in²'], [1, IN2_M2, 0], ['W/in2', 'W/in^2']),
];

/** Every unit, kinds together, the everyday one of a kind not necessarily first. */
export const UNITS: readonly Unit[] = [
  ...LENGTHS,
  ...ANGLES_AND_TIMES,
  ...MASSES_FORCES_PRESSURES,
  ...TEMPERATURES,
  ...RATES,
  ...AREAS_AND_VOLUMES,
  ...POWERS,
  unit(['count', 'any', '', ''], [1, 1, 0], []),
];

const BY_SPELLING: ReadonlyMap<string, Unit> = new Map(UNITS.flatMap((u) => u.spellings.map((s) => [s, u] as const)));

/** All units of a kind, in the order of the table. */
export function unitsOf(kind: Kind): readonly Unit[] {
  return UNITS.filter((u) => u.kind === kind);
}

/** The unit written so, blanks around it and doubled blanks aside; undefined where there is none. */
export function findUnit(text: string): Unit | undefined {
  return BY_SPELLING.get(text.trim().replace(/\s+/g, ' '));
}

/** The unit of an id held by the program. Throws on an unknown id: that is our bug, never a user's. */
export function unitById(id: string): Unit {
  const found = BY_SPELLING.get(id);
  if (found === undefined) throw new RangeError(`no unit '${id}'`);
  return found;
}
