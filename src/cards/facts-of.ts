/** Ids of all facts that a card, or a piece of one, shows. */
export function factsOf(shown: unknown): ReadonlySet<string> {
  const ids = new Set<string>();
  const walk = (value: unknown): void => {
    if (typeof value !== 'object' || value === null) return;
    for (const [key, field] of Object.entries(value)) {
      if (key === 'fact' && typeof field === 'string') ids.add(field);
      else walk(field);
    }
  };
  walk(shown);
  return ids;
}
