/**
 * Sums and differences of quantities that keep why each may be off.
 *
 * Causes are merged by name before limits are taken: a cause that enters twice with opposite signs cancels, one that enters
 * twice with the same sign counts double, and neither is counted as if it were two independent things.
 */
import type { Cause, Kind, Quantity } from './quantity.ts';

export interface Term<K extends Kind> {
  readonly factor: number;
  readonly of: Quantity<K>;
}

/**
 * Linear combination of quantities of one kind, in the unit of the first. Exact for lengths with whole factors.
 * Limits are the worst case of the merged causes; with no causes left the result is taken as exact.
 */
export function combine<K extends Kind>(first: Term<K>, ...others: readonly Term<K>[]): Quantity<K> {
  const terms = [first, ...others];
  const value = terms.reduce((sum, term) => sum + term.factor * term.of.value, 0);
  const causes = mergedCauses(terms.flatMap((term) => scaledCauses(term.of.causes ?? [], term.factor)));
  const decimals = Math.max(...terms.filter((term) => term.of.unit === first.of.unit).map((term) => term.of.decimals));
  return withCauses({ kind: first.of.kind, value, unit: first.of.unit, decimals }, causes);
}

export const add = <K extends Kind>(first: Quantity<K>, ...others: readonly Quantity<K>[]): Quantity<K> =>
  combine({ factor: 1, of: first }, ...others.map((of) => ({ factor: 1, of })));

export const subtract = <K extends Kind>(from: Quantity<K>, ...others: readonly Quantity<K>[]): Quantity<K> =>
  combine({ factor: 1, of: from }, ...others.map((of) => ({ factor: -1, of })));

export const scale = <K extends Kind>(q: Quantity<K>, factor: number): Quantity<K> => combine({ factor, of: q });

/** A quantity with these causes; its limits are their worst case. */
export function withCauses<K extends Kind>(q: Quantity<K>, causes: readonly Cause[]): Quantity<K> {
  const rest = 'low' in q || 'high' in q || 'causes' in q ? withoutLimits(q) : q;
  if (causes.length === 0) return rest;
  const spread = worstCase(causes);
  // A share of a length, times a deviation, may end a hair beside the whole nanometre it is.
  const whole = q.kind === 'length' ? Math.round : (x: number) => x;
  return { ...rest, low: whole(q.value + spread.minus), high: whole(q.value + spread.plus), causes };
}

function withoutLimits<K extends Kind>(q: Quantity<K>): Quantity<K> {
  const { low: _low, high: _high, causes: _causes, ...rest } = q;
  return rest;
}

/** Without its limits: the nominal alone. */
export const nominal = <K extends Kind>(q: Quantity<K>): Quantity<K> => withCauses(q, []);

/** The worst case of a list of causes, as deviations in base units: least ≤ 0 and most ≥ 0. */
export function worstCase(causes: readonly Cause[]): { minus: number; plus: number } {
  let minus = 0;
  let plus = 0;
  for (const cause of causes) {
    const { sensitivity } = cause;
    minus += sensitivity * (sensitivity > 0 ? cause.minus : cause.plus);
    plus += sensitivity * (sensitivity > 0 ? cause.plus : cause.minus);
  }
  return { minus, plus };
}

/**
 * Root-sum-square half width of a list of causes, in base units: √Σ(s·t)², t the half width of each cause.
 * Holds for causes that are independent, centred and equally capable (textbook tolerance stack).
 */
export function rootSumSquare(causes: readonly Cause[]): number {
  return Math.sqrt(causes.reduce((sum, c) => sum + ((c.sensitivity * (c.plus - c.minus)) / 2) ** 2, 0));
}

/** The same causes, each with so many times the effect. */
export const scaledCauses = (causes: readonly Cause[], factor: number): Cause[] =>
  causes.map((cause) => ({ ...cause, sensitivity: cause.sensitivity * factor }));

/** One cause counts once, by all ways it comes in. */
export function mergedCauses(causes: readonly Cause[]): Cause[] {
  const merged = new Map<string, Cause>();
  for (const cause of causes) {
    const met = merged.get(cause.cause);
    merged.set(cause.cause, met ? { ...met, sensitivity: met.sensitivity + cause.sensitivity } : cause);
  }
  return [...merged.values()].filter((cause) => cause.sensitivity !== 0);
}

/** A size at its greatest. */
export const most = <K extends Kind>(q: Quantity<K>): Quantity<K> => ({ ...nominal(q), value: q.high ?? q.value });

/** A size at its least. */
export const least = <K extends Kind>(q: Quantity<K>): Quantity<K> => ({ ...nominal(q), value: q.low ?? q.value });
