/**
 * What stands over one cell: layers of wood, the same over all of it, or other ones over each part where the edge of a void
 * runs through. Where two edges run through one cell nothing is known of how they lie to each other there: each is taken to
 * cover the same share of what the other covers and of what it leaves.
 */
import type { Span } from './solid.ts';

export interface Wood {
  readonly low: number;
  readonly high: number;
  /** Who bounds it below and above. */
  readonly under: number;
  readonly over: number;
}

export interface Stack {
  /** Of the cell, 0 … 1. */
  readonly share: number;
  /** From the lowest up. */
  readonly layers: readonly Wood[];
}

/** Nearer than this to all of a cell is all of it. */
export const ALL = 1 - 1e-9;

/** What a void takes in one part of a cell (0 … 1). */
export interface Bite {
  readonly part: number;
  readonly span: Span;
}

/** Stacks after a void takes its bites out of each, and what it took: mm over the cell's area. */
export function cutOut(
  stacks: readonly Stack[],
  bites: readonly Bite[],
  by: number,
): { readonly stacks: readonly Stack[]; readonly takenMm: number } {
  let takenMm = 0;
  const after: Stack[] = [];
  for (const { share, layers } of stacks) {
    const whole = thickness(layers);
    let left = 1;
    for (const { part, span } of bites) {
      const rest = layers.flatMap((wood) => without(wood, span, by));
      const gone = whole - thickness(rest);
      if (gone === 0) continue;
      const own = part > ALL ? 1 : part;
      after.push({ share: share * own, layers: rest });
      takenMm += gone * share * own;
      left -= own;
    }
    if (left > 1 - ALL) after.push({ share: share * left, layers });
  }
  return { stacks: after, takenMm };
}

function without(wood: Wood, { low, high }: Span, by: number): readonly Wood[] {
  if (high <= wood.low || low >= wood.high) return [wood];
  const below: Wood[] = low > wood.low ? [{ ...wood, high: low, over: by }] : [];
  return high < wood.high ? [...below, { ...wood, low: high, under: by }] : below;
}

function thickness(layers: readonly Wood[]): number {
  let mm = 0;
  for (const { low, high } of layers) mm += high - low;
  return mm;
}

/** The thinnest layer in any part of the cell; undefined where in some part nothing is left. */
export function thinnest(stacks: readonly Stack[]): Wood | undefined {
  let best: Wood | undefined;
  for (const { layers } of stacks) {
    if (layers.length === 0) return undefined;
    for (const wood of layers) if (best === undefined || wood.high - wood.low < best.high - best.low) best = wood;
  }
  return best;
}

/** Volume and its first moment about z = 0 for each mm² of the cell, up to a height: mm and mm². */
export function sums(stacks: readonly Stack[], upTo: number): { readonly mm: number; readonly momentMm2: number } {
  let [mm, momentMm2] = [0, 0];
  for (const { share, layers } of stacks) {
    for (const { low, high: end } of layers) {
      const high = Math.min(end, upTo);
      if (high <= low) continue;
      mm += share * (high - low);
      momentMm2 += (share * (high - low) * (high + low)) / 2;
    }
  }
  return { mm, momentMm2 };
}
