/** A number that a card shows in several kinds of places, in a key number, a check and a table, is told once: where it stands first. */
import type { Change } from './change.ts';

export function toldOnce(changes: readonly Change[]): readonly Change[] {
  const told = new Map<string, string>();
  return changes.filter(({ is, moves }) => {
    // Two rows of one list are two things, even where they have one number.
    const again = moves.length > 0 && moves.every(({ fact }) => (told.get(fact) ?? is) !== is);
    for (const { fact } of moves) if (!told.has(fact)) told.set(fact, is);
    return !again;
  });
}
