/** Which facts differ, and which given lines that goes back to. */
import type { FactState } from '../facts/state.ts';
import { isSame } from './move.ts';

export interface FactChange {
  readonly id: string;
  readonly old?: FactState;
  readonly new?: FactState;
}

/** `finishes` of `finishes[amber-shaded]`: a list is one line, whatever its items. */
export const listOf = (id: string): string => id.replace(/\[[^\]]*\]$/, '');

type States = ReadonlyMap<string, FactState>;

/** Whether a line of the plant that a side does not read is there all the same; undefined where nobody knows. */
export type Has = (id: string) => boolean | undefined;

/**
 * In the order of the new facts, then what is gone. A row that is read on one side alone did not change: what made it read did.
 */
export function changedFacts(
  before: States,
  after: States,
  has: { readonly old: Has; readonly new: Has } = { old: () => false, new: () => false },
): ReadonlyMap<string, FactChange> {
  const changed = new Map<string, FactChange>();
  const alone = ({ id, from }: FactState, there: Has) =>
    from !== 'published' && (from !== 'plant' || there(id) === false);
  for (const [id, now] of after) {
    const was = before.get(id);
    if (!was) {
      if (alone(now, has.old)) changed.set(id, { id, new: now });
    } else if (!sameValue(was, now)) changed.set(id, { id, old: was, new: now });
  }
  for (const [id, was] of before) if (!after.has(id) && alone(was, has.new)) changed.set(id, { id, old: was });
  return changed;
}

/** Not how it is written: 16.40 mm and 1.64 cm are one value. */
function sameValue(a: FactState, b: FactState): boolean {
  if (a.number && b.number) {
    const [x, y] = [a.number, b.number];
    return x.kind === y.kind && isSame(x.value, y.value) && isSame(x.low, y.low) && isSame(x.high, y.high);
  }
  if (a.print !== undefined && b.print !== undefined) return a.print === b.print;
  return plain(a.text) === plain(b.text);
}

const plain = (text: string): string => text.replace(/\s+/g, ' ').trim();

/** Lines somebody gave, or published rows, that a changed fact goes back to by way of changed facts; in the order met. */
export function rootsIn(changed: ReadonlyMap<string, FactChange>): (id: string) => readonly string[] {
  const known = new Map<string, ReadonlySet<string>>();
  const rootsOf = (id: string): ReadonlySet<string> => {
    const done = known.get(id);
    if (done) return done;
    const found = new Set<string>();
    known.set(id, found);
    const change = changed.get(id);
    if (!change) return found;
    if ((change.new ?? change.old)!.from !== 'derived') return found.add(id);
    const inputs = new Set([...(change.old?.inputs ?? []), ...(change.new?.inputs ?? [])]);
    for (const input of inputs) for (const root of rootsOf(input)) found.add(root);
    return found;
  };
  return (id) => [...new Set([...rootsOf(id)].map(listOf))];
}
