/** Suggestions for a name that is nearly right. */

/** The known name nearest to what was written, if it is near enough to be what was meant. */
export function nearest(written: string, known: Iterable<string>): string | undefined {
  const names = [...known];
  // Part of a name is nearer than any other name.
  const longer = names.filter((name) => name.startsWith(written) && written.length >= 3);
  if (longer.length === 1) return longer[0];
  let best: { name: string; distance: number } | undefined;
  for (const name of names) {
    const distance = editDistance(written.toLowerCase(), name.toLowerCase());
    if (!best || distance < best.distance) best = { name, distance };
  }
  return best && best.distance <= Math.max(1, Math.floor(best.name.length / 3)) ? best.name : undefined;
}

/** "did you mean …?", or the list of what there is when nothing is near. */
export function offer(written: string, known: Iterable<string>): string {
  const names = [...known].toSorted();
  const near = nearest(written, names);
  if (near !== undefined) return `Did you mean "${near}"?`;
  return names.length === 0
    ? 'There is none yet: add it first.'
    : `Take one of: ${names.slice(0, 12).join(', ')}${names.length > 12 ? ', …' : ''}.`;
}

/** Least number of letters changed, added, dropped or swapped with their neighbour (restricted Damerau–Levenshtein). */
export function editDistance(a: string, b: string): number {
  let before: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      let cost = Math.min(last[j]! + 1, row[j - 1]! + 1, last[j - 1]! + same);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) cost = Math.min(cost, before[j - 2]! + 1);
      row.push(cost);
    }
    before = last;
    last = row;
  }
  return last[b.length]!;
}
