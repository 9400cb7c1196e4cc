/** Other values in place of one: what a test of influence puts in, and how it sees that something moved. */

type Change = (n: number, key: string) => number;

/** A tenth more, a tenth less, and limits half as wide again; each keeps whole numbers whole. */
const numberChanges: readonly Change[] = [
  (n) => kept(n, n * 1.1 + (n === 0 ? 1 : 0)),
  (n) => kept(n, n * 0.9),
  (n) => kept(n, n * 3),
  // Nothing, and beyond: of many of which the least counts, this one becomes it.
  () => 0,
  (n) => -n - 1e7,
];

const kept = (before: number, after: number): number => {
  if (!Number.isInteger(before)) return after;
  const rounded = Math.round(after);
  return rounded === before ? before + Math.sign(after - before || 1) : rounded;
};

const isQuantity = (
  value: object,
): value is { value: number; low?: number; high?: number; causes?: readonly object[] } =>
  'kind' in value && 'value' in value && 'unit' in value;

/** Values to try in its place, the likeliest to show first. */
export function others(value: unknown): unknown[] {
  if (typeof value === 'object' && value !== null && isQuantity(value)) return quantities(value);
  if (typeof value === 'boolean') return [!value];
  if (typeof value === 'string') return [`${value}-other`];
  return [...numberChanges.map((change) => mapped(value, change)), flipped(value)];
}

function quantities(q: { value: number; low?: number; high?: number; causes?: readonly object[] }): unknown[] {
  const moved = numberChanges.map((change) => {
    const value = change(q.value, 'value');
    const by = value - q.value;
    return {
      ...q,
      value,
      ...(q.low === undefined ? {} : { low: q.low + by }),
      ...(q.high === undefined ? {} : { high: q.high + by }),
    };
  });
  if (q.low === undefined || q.high === undefined) return moved;
  const { low, high } = q;
  const widen = (by: number): number => Math.round(by * 1.5) || by * 1.5;
  const wider = {
    ...q,
    low: q.value - widen(q.value - low),
    high: q.value + widen(high - q.value),
    causes: q.causes?.map((cause) => {
      const { minus, plus } = cause as { minus: number; plus: number };
      return { ...cause, minus: minus * 1.5, plus: plus * 1.5 };
    }),
  };
  return [...moved, wider];
}

/** The same thing with every number in it changed; words and functions as they are. */
function mapped(value: unknown, change: Change): unknown {
  if (typeof value === 'number') return change(value, '');
  if (value instanceof Float64Array || value instanceof Float32Array) return value.map((n) => change(n, ''));
  if (Array.isArray(value)) return value.map((one) => mapped(one, change));
  if (typeof value !== 'object' || value === null) return value;
  if (isQuantity(value)) return quantities(value)[0];
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, mapped(one, change)]));
}

/** The same thing with every yes a no, and every list without its first. */
function flipped(value: unknown): unknown {
  if (typeof value === 'boolean') return !value;
  if (Array.isArray(value)) return value.slice(1);
  if (typeof value !== 'object' || value === null || ArrayBuffer.isView(value)) return value;
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, flipped(one)]));
}

/** Whether two values are the same to the last bit; functions are not looked into. */
export function same(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a === 'function' && typeof b === 'function') return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (ArrayBuffer.isView(a) && ArrayBuffer.isView(b)) return sameNumbers(a as Float64Array, b as Float64Array);
  const keys = Object.keys(a);
  if (keys.length !== Object.keys(b).length) return false;
  return keys.every((key) => same((a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key]));
}

function sameNumbers(a: Float64Array, b: Float64Array): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (!Object.is(a[i], b[i])) return false;
  return true;
}
