/** Facts that cannot be derived although nobody has said why. */
import type { Fact, Facts } from '../facts/facts.ts';
import { placeOf as placeOfMap } from '../facts/placed.ts';
import type { Subject } from '../facts/subject.ts';
import type { Finding, Kind, Note, Place } from '../findings/finding.ts';
import { placeOf } from './place.ts';

/** Something is not given, or numbers lead back to themselves. `about`: what other findings have said already. */
export function underived(subject: Subject, facts: Facts, about: readonly string[], whole: Place): Finding[] {
  const gaps = new Map<string, Finding>();
  for (const fact of facts.all()) {
    if (fact.state.ok) continue;
    const { missing, ring } = fact.state;
    if (ring) {
      const key = `ring ${[...ring].toSorted().join(' ')}`;
      const names = ring.map((id) => facts.fact(id)?.label ?? id).join(' → ');
      const place = placeOf(facts, ring[0]!) ?? whole;
      if (!gaps.has(key))
        gaps.set(key, gap('ring-of-numbers', ring[0]!, place, `These numbers wait for each other: ${names}.`));
      continue;
    }
    const unexplained = missing.filter((id) => !about.some((known) => isUnder(id, known) || isUnder(known, id)));
    for (const id of unexplained) {
      const what = `"${fact.label}" cannot be computed: ${id} is not given.`;
      const place = nearestMap(subject, id) ?? placeOf(facts, fact.id) ?? whole;
      if (!gaps.has(id))
        gaps.set(id, { ...gap('number-not-derivable', id, place, what), notes: namedAt(facts, fact, id) });
    }
  }
  return [...gaps.values()];
}

/** Of a row that lacks something, the line that names it: perhaps another was meant. */
function namedAt(facts: Facts, { inputs }: Fact, missing: string): readonly Note[] {
  const [root, , name] = missing.split('.');
  if (root !== 'plant') return [];
  return inputs.flatMap((id) => {
    const state = facts.fact(id)?.state;
    const place = state?.ok && state.value === name ? placeOf(facts, id) : undefined;
    return place ? [{ place, text: `${name} is named here` }] : [];
  });
}

export const isUnder = (id: string, above: string): boolean => id === above || id.startsWith(`${above}.`);

/** Where something that is not given belongs: the innermost map on the way to it that is there. */
function nearestMap({ spec, plant }: Subject, id: string): Place | undefined {
  const parts = id.split('.');
  const path = parts[0] === 'plant' ? parts.slice(1) : parts;
  let at: unknown = parts[0] === 'plant' ? plant : spec;
  let place: Place | undefined;
  for (const part of path) {
    if (typeof at !== 'object' || at === null || !Object.hasOwn(at, part)) break;
    at = (at as Record<string, unknown>)[part];
    if (typeof at === 'object' && at !== null) place = placeOfMap(at) ?? place;
  }
  return place;
}

const kinds = {
  'ring-of-numbers': {
    why: 'Numbers that wait for each other are never computed, and the card would have gaps.',
    mend: 'Give one of them, so that the others have something to start from.',
  },
  'number-not-derivable': {
    why: 'A card would have a gap where this number belongs.',
    mend: 'Give what is missing, in the model, the file it is based on, or the plant.',
  },
} as const;

/** For the reference page. */
export const gapKinds: readonly Kind[] = Object.entries(kinds).map(([id, kind]) => ({
  id,
  stage: 'derived',
  severity: 'error',
  ...kind,
}));

const gap = (id: keyof typeof kinds, about: string, place: Place, what: string): Finding => ({
  id,
  severity: 'error',
  place,
  what,
  ...kinds[id],
  notes: [],
  about: [about],
});
