/**
 * A quantity: a number that knows what it measures, how it was written and how far it may be off.
 *
 * Values are held in one base unit a kind. Lengths are held in nanometres: 1 in = 25 400 000 nm, 1 thou = 25 400 nm,
 * 1/64 in = 396 875 nm, 0.01 mm = 10 000 nm are whole numbers, so sums, differences and comparisons of lengths as written
 * are exact in a double (to 2^53 nm, 9 000 km) and no rounding step can be missed by a hair.
 */
export type Kind =
  | 'length'
  | 'angle'
  | 'time'
  | 'mass'
  | 'force'
  | 'pressure'
  | 'temperature'
  | 'temperature-difference'
  | 'fraction'
  | 'speed'
  | 'rotation'
  | 'spread'
  | 'area'
  | 'timber-volume'
  | 'volume'
  | 'density'
  | 'power'
  | 'power-density'
  | 'count';

/** Base unit of each kind: the unit `value`, `low` and `high` of a quantity are held in. */
export const BASE = {
  length: 'nm',
  angle: 'deg',
  time: 's',
  mass: 'kg',
  force: 'N',
  pressure: 'Pa',
  temperature: 'K',
  'temperature-difference': 'K (difference)',
  fraction: '1 (100 % = 1)',
  speed: 'm/s',
  rotation: '1/min',
  spread: 'kg/m²',
  area: 'm²',
  'timber-volume': 'm³',
  volume: 'm³',
  density: 'kg/m³',
  power: 'W',
  'power-density': 'W/m²',
  count: '1',
} as const satisfies Record<Kind, string>;

/**
 * One reason why a quantity may be off, kept by name so that a cause met twice on two ways is counted once.
 * Deviations are in the base unit of the quantity that carries it, before the sensitivity is applied.
 */
export interface Cause {
  /** What varies: the id of the fact whose limits these are. */
  readonly cause: string;
  /** Change of the quantity per unit change of the cause. */
  readonly sensitivity: number;
  /** Lowest deviation of the cause from its nominal, ≤ 0. */
  readonly minus: number;
  /** Highest deviation of the cause from its nominal, ≥ 0. */
  readonly plus: number;
}

export interface Quantity<K extends Kind = Kind> {
  readonly kind: K;
  /** Nominal, in the base unit of the kind. Of a range given without nominal, its middle. */
  readonly value: number;
  /** Hard limits, inclusive, in the base unit; absent where the quantity has no limits. */
  readonly low?: number;
  readonly high?: number;
  /** Unit as written, in which people expect to read it back. */
  readonly unit: string;
  /** Decimals as written in that unit: `12.50` keeps its 2. */
  readonly decimals: number;
  /** How the limits were written, where not as ±: `17.4..17.6` or `+0.3/-0`. Text only, no meaning. */
  readonly form?: 'range' | 'deviations';
  /** Of an inch written as a fraction (`1-3/4 in ±1/64`): the largest denominator, 64. Text only, no meaning. */
  readonly denominator?: number;
  /** Why it may be off. Absent or empty: taken as exact. */
  readonly causes?: readonly Cause[];
}

export type Length = Quantity<'length'>;

/** True where the quantity has limits. */
export function isToleranced<K extends Kind>(q: Quantity<K>): q is Quantity<K> & { low: number; high: number } {
  return q.low !== undefined && q.high !== undefined;
}
