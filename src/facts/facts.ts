/**
 * Facts: every value anything downstream may read, each with its origin. Cards, checks, trace and diff read facts and
 * nothing else.
 *
 * A derived fact is computed when first asked for. While its function runs, every leaf it opens and every fact it asks for
 * is put on record as an input; the record is the trace. A fact whose inputs are missing, or lead back to itself, is
 * unavailable: it says because of what, and whatever needs it is unavailable too.
 */
import { Leaf, holeId } from './leaf.ts';
import type { Writing } from './leaf.ts';
import { Unavailable } from './unavailable.ts';

/** Ids and types of derived facts. Each rule adds its own beside its code (declaration merging). */
export interface DerivedFacts {}

/** Where a formula comes from. */
export type Source =
  | { readonly kind: 'definition' }
  | { readonly kind: 'practice'; readonly note: string }
  | { readonly kind: 'published'; readonly text: string };

export const byDefinition: Source = { kind: 'definition' };
export const practice = (note: string): Source => ({ kind: 'practice', note });
export const publishedIn = (text: string): Source => ({ kind: 'published', text });

export type Origin = Writing | { readonly kind: 'derived'; readonly formula: string; readonly source: Source };

export interface Fact<T = unknown> {
  readonly id: string;
  /** What it is, in words; of a leaf, its path. */
  readonly label: string;
  readonly origin: Origin;
  /** Ids of the facts it was computed from, in the order they were asked for. */
  readonly inputs: readonly string[];
  readonly state:
    | { readonly ok: true; readonly value: T }
    /** Ids of the missing facts, or the ring of facts that lead back to this one. */
    | { readonly ok: false; readonly missing: readonly string[]; readonly ring?: readonly string[] };
}

/** Reads while a fact is computed: each reading is put on record. */
export interface Use {
  <T>(leaf: Leaf<T>): T;
  fact: <I extends keyof DerivedFacts>(id: I) => DerivedFacts[I];
}

export interface Derivation<I extends keyof DerivedFacts = keyof DerivedFacts> {
  readonly id: I;
  readonly label: string;
  readonly formula: string;
  readonly source: Source;
  readonly value: (use: Use) => DerivedFacts[I];
}

/** What a reader gave, or what was missing; either way, everything it looked at. */
export type Reading<T> =
  | { readonly ok: true; readonly value: T; readonly inputs: readonly string[] }
  | {
      readonly ok: false;
      readonly missing: readonly string[];
      readonly inputs: readonly string[];
      readonly ring?: readonly string[];
    };

export interface Facts {
  /** The fact of that id, computed if need be; undefined where neither a leaf opened so far nor a derivation has it. */
  fact(id: string): Fact | undefined;
  /** Runs a reader; what it read is returned with its value, or what was missing. */
  read<T>(reader: (use: Use) => T): Reading<T>;
  /** The value of a leaf for a look at its form alone: no record of a use. */
  peek<T>(leaf: Leaf<T>): T;
  /** Lists a leaf among the facts, so that a finding can stand at it; no record of a use. */
  note(leaf: Leaf<unknown>): void;
  /** Every fact a check or a card has read, and all they came from. */
  consulted(): ReadonlySet<string>;
  /** Whether a derivation of that id exists for this model. */
  has: (id: string) => id is keyof DerivedFacts;
  /** Computes everything there is and lists it in the order of the derivations, leaves after. */
  all(): readonly Fact[];
}

/** A hole that a reader took along in what it gave. */
function gapIn(value: unknown): string | undefined {
  if (typeof value !== 'object' || value === null || ArrayBuffer.isView(value)) return undefined;
  for (const part of Object.values(value)) {
    const gap = holeId(part);
    if (gap !== undefined) return gap;
  }
  return undefined;
}

export function makeFacts(derivations: readonly Derivation[]): Facts {
  const byId = new Map<string, Derivation>();
  for (const derivation of derivations) {
    if (byId.has(derivation.id)) throw new Error(`two derivations of ${derivation.id}`);
    byId.set(derivation.id, derivation);
  }
  const known = new Map<string, Fact>();
  const running: string[] = [];

  function openLeaf<T>(leaf: Leaf<T>, record: Set<string>): T {
    const gap = holeId(leaf) ?? (leaf === undefined ? 'something not given' : undefined);
    if (gap !== undefined) {
      record.add(gap);
      throw new Unavailable([gap]);
    }
    record.add(leaf.id);
    const value = Leaf.open(leaf);
    list(leaf, value);
    return value;
  }

  function list(leaf: Leaf<unknown>, value: unknown): void {
    if (known.has(leaf.id)) return;
    known.set(leaf.id, { id: leaf.id, label: leaf.id, origin: leaf.writing, inputs: [], state: { ok: true, value } });
  }

  function askFact(id: string, record: Set<string>): unknown {
    record.add(id);
    const fact = compute(id);
    if (fact === undefined) throw new Unavailable([id]);
    if (!fact.state.ok) throw new Unavailable(fact.state.missing, fact.state.ring);
    return fact.state.value;
  }

  function user(record: Set<string>): Use {
    const use = (<T>(leaf: Leaf<T>): T => openLeaf(leaf, record)) as Use;
    use.fact = ((id: string) => askFact(id, record)) as Use['fact'];
    return use;
  }

  function read<T>(reader: (use: Use) => T): Reading<T> {
    const record = new Set<string>();
    try {
      const value = reader(user(record));
      const gap = holeId(value) ?? gapIn(value);
      if (gap === undefined) return { ok: true, value, inputs: [...record] };
      return { ok: false, missing: [gap], inputs: [...record, gap] };
    } catch (stop) {
      if (!(stop instanceof Unavailable)) throw stop;
      return { ok: false, missing: stop.ids, inputs: [...record], ...(stop.ring ? { ring: stop.ring } : {}) };
    }
  }

  function compute(id: string): Fact | undefined {
    const done = known.get(id);
    if (done) return done;
    const derivation = byId.get(id);
    if (!derivation) return undefined;
    const from = running.indexOf(id);
    if (from >= 0) throw new Unavailable([id], running.slice(from));
    running.push(id);
    const result = read(derivation.value as (use: Use) => unknown);
    running.pop();
    const { label, formula, source } = derivation;
    const fact: Fact = {
      id,
      label,
      origin: { kind: 'derived', formula, source },
      inputs: result.inputs,
      state: result.ok
        ? { ok: true, value: result.value }
        : { ok: false, missing: result.missing, ...(result.ring ? { ring: result.ring } : {}) },
    };
    known.set(id, fact);
    return fact;
  }

  const consulted = new Set<string>();

  /** Reads from outside: a check, a card. What it looked at counts as used. */
  function consult<T>(reader: (use: Use) => T): Reading<T> {
    const reading = read(reader);
    for (const id of reading.inputs) consulted.add(id);
    return reading;
  }

  function upstream(ids: Iterable<string>): ReadonlySet<string> {
    const seen = new Set<string>();
    const visit = (id: string): void => {
      if (seen.has(id)) return;
      seen.add(id);
      compute(id)?.inputs.forEach(visit);
    };
    for (const id of ids) visit(id);
    return seen;
  }

  return {
    fact: compute,
    read: consult,
    peek: (leaf) => Leaf.open(leaf),
    note: (leaf) => list(leaf, Leaf.open(leaf)),
    consulted: () => upstream(consulted),
    has: (id): id is keyof DerivedFacts => byId.has(id),
    all() {
      const derived = [...byId.keys()].map((id) => compute(id)!);
      const leaves = [...known.values()].filter((fact) => fact.origin.kind !== 'derived');
      return [...derived, ...leaves.toSorted((a, b) => (a.id < b.id ? -1 : 1))];
    },
  };
}
