import type { Kind } from './quantity.ts';
import type { Unit } from './unit.ts';
import { UNITS } from './unit.ts';

/** Longer texts are no slip of a unit, and the distance costs the product of the lengths. */
const LONGEST_SLIP = 24;

/**
 * The unit most likely meant by an unknown spelling, within two slips and less than the length of the text; of equals,
 * one of the wanted kind. Undefined where nothing is near.
 */
export function nearestUnit(text: string, kind?: Kind): Unit | undefined {
  const wanted = text.trim().replace(/\s+/g, ' ');
  if (wanted === '' || wanted.length > LONGEST_SLIP) return undefined;
  let best: { unit: Unit; score: number } | undefined;
  for (const unit of UNITS) {
    for (const spelling of unit.spellings) {
      const slips = slipsBetween(wanted, spelling);
      const score = slips + (unit.kind === kind ? 0 : 0.75);
      const near = spelling !== '' && slips <= 2 && slips < wanted.length;
      if (near && (best === undefined || score < best.score)) best = { unit, score };
    }
  }
  return best?.unit;
}

/** Levenshtein distance, where a letter of the other case counts a quarter: `MM` is nearer to `mm` than to `m`. */
function slipsBetween(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i += 1) {
    const next = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const swap = (row[j - 1] ?? 0) + letterCost(a.charAt(i - 1), b.charAt(j - 1));
      next.push(Math.min(swap, (row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1));
    }
    row = next;
  }
  return row[b.length] ?? 0;
}

function letterCost(a: string, b: string): number {
  if (a === b) return 0;
  return a.toLowerCase() === b.toLowerCase() ? 0.25 : 1;
}
