/** How far a number moved, held against the limits it had, and what became of the limits. */
import type { FactNumber } from '../facts/state.ts';
import type { Kind } from '../units/quantity.ts';

/** Of the limits as a set of readings: no reading of the old is in the new, some are, all are and more, or only fewer. */
export type LimitsMoved = 'apart' | 'overlap' | 'wider' | 'tighter';

export interface Move {
  readonly kind: Kind;
  /** Of the nominal, in the base unit of the kind. */
  readonly by: number;
  /** Where the nominal stands still: the most that one of its limits moved. */
  readonly limitBy?: number;
  /** Share of the width of its old limits, from the lower to the upper: of what moved. */
  readonly ofTolerance?: number;
  readonly limits?: LimitsMoved;
}

/** Whole nanometres are exact; another kind in another unit may be another double by its last bits. */
export const isSame = (a: number | undefined, b: number | undefined): boolean =>
  a === b ||
  (a !== undefined &&
    b !== undefined &&
    Number.isFinite(a - b) &&
    Math.abs(a - b) <= 1e-12 * Math.max(Math.abs(a), Math.abs(b)));

/** Undefined of two that measure different things, and where nothing moved. */
export function moveOf(old: FactNumber, now: FactNumber): Move | undefined {
  if (old.kind !== now.kind) return undefined;
  const by = between(old.value, now.value);
  const limitBy = [between(old.low, now.low), between(old.high, now.high)].reduce((most, one) =>
    Math.abs(one) > Math.abs(most) ? one : most,
  );
  const width = old.low === undefined || old.high === undefined ? 0 : old.high - old.low;
  const limits = limitsMoved(old, now);
  const size = by === 0 ? limitBy : by;
  if (size === 0 && limits === undefined) return undefined;
  return {
    kind: old.kind === 'temperature' ? 'temperature-difference' : old.kind,
    by,
    ...(by === 0 && limitBy !== 0 ? { limitBy } : {}),
    ...(width > 0 && size !== 0 ? { ofTolerance: Math.abs(size) / width } : {}),
    ...(limits === undefined ? {} : { limits }),
  };
}

/** The unit of its size: a step between two temperatures is no temperature. */
export const moveUnit = (kind: Kind, of: FactNumber): string => (kind === of.kind ? of.unit : `Δ${of.unit}`);

const between = (from: number | undefined, to: number | undefined): number =>
  from === undefined || to === undefined || isSame(from, to) ? 0 : to - from;

/** A limit that is not there lets everything pass on its side. */
function limitsMoved(old: FactNumber, now: FactNumber): LimitsMoved | undefined {
  const bounded = [old.low, old.high, now.low, now.high].some((limit) => limit !== undefined);
  const [low, high] = [old.low ?? -Infinity, old.high ?? Infinity];
  const [below, above] = [now.low ?? -Infinity, now.high ?? Infinity];
  if (!bounded || (isSame(low, below) && isSame(high, above))) return undefined;
  if (high < below || above < low) return 'apart';
  if (below <= low && above >= high) return 'wider';
  return below >= low && above <= high ? 'tighter' : 'overlap';
}
