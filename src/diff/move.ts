/** How far a number moved, held against the limits it had, and what became of the limits. */
import type { FactNumber } from '../facts/state.ts';
import type { Kind } from '../units/quantity.ts';

/** Of the limits as a set of readings: no reading of the old is in the new, some are, all are and more, or only fewer. */
export type LimitsMoved = 'apart' | 'overlap' | 'wider' | 'tighter';

export interface Move {
  readonly kind: Kind;
  /** In the base unit of the kind; of a number whose limits moved and not its nominal, what they moved by. */
  readonly by: number;
  /** Share of the width of its old limits, from the lower to the upper. */
  readonly ofTolerance?: number;
  readonly limits?: LimitsMoved;
}

/** Undefined of two that measure different things. */
export function moveOf(old: FactNumber, now: FactNumber): Move | undefined {
  if (old.kind !== now.kind) return undefined;
  const steps = [now.value - old.value, between(old.low, now.low), between(old.high, now.high)];
  // Where the nominal stands still, the limit that moved furthest.
  const by = steps[0] !== 0 ? steps[0]! : steps.reduce((most, one) => (Math.abs(one) > Math.abs(most) ? one : most));
  const width = old.low === undefined || old.high === undefined ? 0 : old.high - old.low;
  const limits = limitsMoved(old, now);
  return {
    kind: old.kind === 'temperature' ? 'temperature-difference' : old.kind,
    by,
    ...(width > 0 ? { ofTolerance: Math.abs(by) / width } : {}),
    ...(limits === undefined ? {} : { limits }),
  };
}

const between = (from: number | undefined, to: number | undefined): number =>
  from === undefined || to === undefined ? 0 : to - from;

/** A limit that is not there lets everything pass on its side. */
function limitsMoved(old: FactNumber, now: FactNumber): LimitsMoved | undefined {
  const bounded = [old.low, old.high, now.low, now.high].some((limit) => limit !== undefined);
  const [low, high] = [old.low ?? -Infinity, old.high ?? Infinity];
  const [below, above] = [now.low ?? -Infinity, now.high ?? Infinity];
  if (!bounded || (low === below && high === above)) return undefined;
  if (high < below || above < low) return 'apart';
  if (below <= low && above >= high) return 'wider';
  return below >= low && above <= high ? 'tighter' : 'overlap';
}
