/** Runs the checks over the facts of one model and turns their faults into findings with places. */
import type { Facts } from '../facts/facts.ts';
import { placeOf as placeOfMap } from '../facts/placed.ts';
import type { Finding, Place, Stage } from '../findings/finding.ts';
import type { Bench, Check, Fault } from './check.ts';
import { all } from './checks/all.generated.ts';
import { isUnder, underived } from './underived.ts';
import { placeOf } from './place.ts';

/** In the order of their stages; chains before what hangs on them. */
const checks: readonly Check[] = all;
const ORDER: readonly Stage[] = ['spec', 'derived', 'card'];

/**
 * Checks of these stages. `known`: findings made before; what follows from one of them hangs under it and is not said as a
 * mistake of its own.
 */
export function runChecks(
  given: Omit<Bench, 'cautions'>,
  stages: readonly Stage[],
  known: readonly Finding[],
): Finding[] {
  const cautions = checks.filter(({ severity }) => severity === 'caution').map(({ id }) => id);
  const bench: Bench = { ...given, cautions };
  const whole = placeOfMap(bench.subject.spec) ?? { file: '', start: 0, end: 0 };
  const found = ORDER.filter((stage) => stages.includes(stage)).flatMap((stage) =>
    checks
      .filter((check) => check.stage === stage)
      .flatMap((check) => check.run(bench).map((fault) => finding(check, fault, bench, whole))),
  );
  const about = [...known, ...found]
    .filter(({ severity }) => severity === 'error')
    .flatMap((one) => [...one.about, ...(one.explains ?? [])]);
  const gaps = stages.includes('derived') ? underived(bench.subject, bench.facts, about, whole) : [];
  return [...gaps, ...found];
}

function finding(check: Check, fault: Fault, bench: Bench, whole: Place): Finding {
  const { facts } = bench;
  const line = fault.place ?? placeOf(facts, fault.at) ?? whole;
  const place = fault.within
    ? { ...line, start: line.start + fault.within[0], end: line.start + fault.within[1] }
    : line;
  const notes = fault.against.flatMap(({ at, text, place: own }) => {
    const other = own ?? placeOf(facts, at);
    return other ? [{ place: other, text }] : [];
  });
  const { id, severity, why } = check;
  const concerned = [fault.at, ...fault.against.map(({ at }) => at)];
  return {
    id,
    severity,
    place,
    what: fault.what,
    why,
    mend: fault.mend,
    notes,
    about: [fault.at, ...concerned.flatMap((id) => lineOf(facts, id))],
    ...(fault.explains === undefined ? {} : { explains: fault.explains }),
    from: upstream(bench, [...concerned, ...(fault.hangsOn ?? [])]),
    ...(fault.cause === undefined ? {} : { cause: fault.cause }),
  };
}

/** The line of the model a fact stands for: its own, or the one it takes over as given. */
function lineOf(facts: Facts, id: string): readonly string[] {
  const fact = facts.fact(id);
  if (fact?.origin.kind === 'given') return [id];
  const [only, ...others] = fact?.inputs ?? [];
  return only !== undefined && others.length === 0 ? lineOf(facts, only) : [];
}

/** These facts and everything they were computed from. */
function upstream({ facts }: Bench, ids: readonly string[]): readonly string[] {
  const seen = new Set<string>();
  const visit = (id: string): void => {
    if (seen.has(id)) return;
    seen.add(id);
    facts.fact(id)?.inputs.forEach(visit);
  };
  ids.forEach(visit);
  return [...seen];
}

/** What follows from an error hangs under it, cautions too: one mistake, one finding at the top. */
export function hang(findings: readonly Finding[]): Finding[] {
  const parents = new Map(findings.map((finding, i) => [finding, causeOf(finding, i, findings)]));
  const rootOf = (finding: Finding): Finding => {
    const way = [finding];
    let up = parents.get(finding);
    for (; up && !way.includes(up); up = parents.get(up)) way.push(up);
    // Where each follows from the next in a ring, the one met first stands for them all.
    const ring = up ? way.slice(way.indexOf(up)) : way.slice(-1);
    return ring.reduce((first, one) => (findings.indexOf(one) < findings.indexOf(first) ? one : first));
  };
  const roots = findings.map(rootOf);
  return findings
    .filter((finding, i) => roots[i] === finding)
    .map((root) => {
      const follows = findings.filter((finding, i) => roots[i] === root && finding !== root);
      return follows.length === 0 ? root : { ...root, follows };
    });
}

/**
 * The error this one follows from: one that is at fault in what it was found in, or that is about something it was found in;
 * where each could follow from the other, the one met first. Else the first of its kind that has the same cause.
 */
function causeOf(finding: Finding, index: number, findings: readonly Finding[]): Finding | undefined {
  const errors = findings.filter((other) => other !== finding && other.severity === 'error');
  const first = ({ about }: Finding) => about.slice(0, 1);
  return (
    errors.find((other) => concerns(first(other), finding) && !concerns(first(finding), other)) ??
    errors.find((other) => concerns(other.about, finding) && !concerns(finding.about, other)) ??
    errors.find((other) => findings.indexOf(other) < index && concerns(other.about, finding)) ??
    findings.slice(0, index).find((other) => finding.cause !== undefined && alike(other, finding)) ??
    // A number that is asked about, and that an error came from: one mistake, seen twice.
    (finding.severity === 'caution'
      ? (errors.find((other) => concerns(first(finding), other)) ??
        findings.find((other) => concerns(first(other), finding) && !concerns(first(finding), other)))
      : undefined)
  );
}

const alike = (a: Finding, b: Finding): boolean => a.id === b.id && a.cause === b.cause;

const concerns = (ids: readonly string[], finding: Finding): boolean =>
  ids.some((id) => (finding.from ?? []).some((from) => isUnder(from, id)));
