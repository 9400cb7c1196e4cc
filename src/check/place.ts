/** Where a fact was given. */
import type { Fact, Facts } from '../facts/facts.ts';
import type { Place } from '../findings/finding.ts';

/**
 * Its own line; of a derived fact the first number of the model it came from, else of the plant, else the first name.
 */
export function placeOf(facts: Facts, id: string): Place | undefined {
  const number = (kind: 'given' | 'plant') =>
    find(facts, id, (fact) => fact.origin.kind === kind && fact.state.ok && typeof fact.state.value !== 'string');
  return number('given') ?? number('plant') ?? find(facts, id, (fact) => fact.origin.kind !== 'derived');
}

function find(facts: Facts, id: string, isIt: (fact: Fact) => boolean, seen = new Set<string>()): Place | undefined {
  if (seen.has(id)) return undefined;
  seen.add(id);
  const fact = facts.fact(id);
  if (!fact) return undefined;
  if ('place' in fact.origin && isIt(fact)) return fact.origin.place;
  for (const input of fact.inputs) {
    const place = find(facts, input, isIt, seen);
    if (place) return place;
  }
  return undefined;
}
