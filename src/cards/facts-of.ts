/** Ids of all facts a card shows. */
import type { Card } from './card.ts';

export function factsOf(card: Card): ReadonlySet<string> {
  const ids = new Set<string>();
  const walk = (value: unknown): void => {
    if (typeof value !== 'object' || value === null) return;
    for (const [key, field] of Object.entries(value)) {
      if (key === 'fact' && typeof field === 'string') ids.add(field);
      else walk(field);
    }
  };
  walk(card);
  return ids;
}
