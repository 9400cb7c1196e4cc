/** Runs the checks over the facts of one model and turns their faults into findings with places. */
import type { Facts } from '../facts/facts.ts';
import { placeOf as placeOfMap } from '../facts/placed.ts';
import type { Subject } from '../facts/subject.ts';
import type { Finding, Place } from '../findings/finding.ts';
import type { Check, Fault } from './check.ts';
import { placeOf } from './check.ts';
import { all } from './checks/all.generated.ts';

/** `known`: findings of reading; what is missing because of them is not said again. */
export function runChecks(subject: Subject, facts: Facts, known: readonly Finding[]): Finding[] {
  const whole = placeOfMap(subject.spec) ?? { file: '', start: 0, end: 0 };
  const about = known.filter((finding) => finding.severity === 'error').flatMap((finding) => finding.about);
  return [
    ...underived(facts, about, whole),
    ...all.flatMap((check: Check) => check.run(subject, facts).map((fault) => finding(check, fault, facts, whole))),
  ];
}

function finding(check: Check, fault: Fault, facts: Facts, whole: Place): Finding {
  const line = placeOf(facts, fault.at) ?? whole;
  const place = fault.within
    ? { ...line, start: line.start + fault.within[0], end: line.start + fault.within[1] }
    : line;
  const notes = fault.against.flatMap(({ at, text }) => {
    const other = placeOf(facts, at);
    return other ? [{ place: other, text }] : [];
  });
  return {
    id: check.id,
    severity: check.severity,
    place,
    what: fault.what,
    why: check.why,
    mend: fault.mend,
    notes,
    about: [fault.at],
  };
}

/** Facts that cannot be derived although nobody has said why: something is not given, or numbers lead back to themselves. */
function underived(facts: Facts, about: readonly string[], whole: Place): Finding[] {
  const gaps = new Map<string, Finding>();
  for (const fact of facts.all()) {
    if (fact.state.ok) continue;
    const { missing, ring } = fact.state;
    if (ring) {
      const key = `ring ${[...ring].toSorted().join(' ')}`;
      const names = ring.map((id) => facts.fact(id)?.label ?? id).join(' → ');
      if (!gaps.has(key))
        gaps.set(key, gap(facts, ring[0]!, whole, 'ring-of-numbers', `These numbers wait for each other: ${names}.`));
      continue;
    }
    const unexplained = missing.filter((id) => !about.some((known) => isUnder(id, known) || isUnder(known, id)));
    for (const id of unexplained) {
      const what = `${fact.label} cannot be computed: ${id} is not given.`;
      if (!gaps.has(id)) gaps.set(id, gap(facts, fact.id, whole, 'number-not-derivable', what));
    }
  }
  return [...gaps.values()];
}

const isUnder = (id: string, above: string): boolean => id === above || id.startsWith(`${above}.`);

function gap(
  facts: Facts,
  id: string,
  whole: Place,
  kind: 'ring-of-numbers' | 'number-not-derivable',
  what: string,
): Finding {
  return {
    id: kind,
    severity: 'error',
    place: placeOf(facts, id) ?? whole,
    what,
    why: 'A card would have a gap where this number belongs.',
    mend:
      kind === 'ring-of-numbers'
        ? 'Give one of them, so that the others have something to start from.'
        : 'Give what is missing, in the model, the file it is based on, or the plant.',
    notes: [],
    about: [id],
  };
}
