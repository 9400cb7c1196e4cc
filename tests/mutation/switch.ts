/**
 * The switch that instrumented code asks at each comparison: which of them is changed now, and how. It also keeps on record
 * which comparisons a check came to, so that no check is run again for one that it does not meet.
 */
import type { Bench, Check, Fault } from '../../src/check/check.ts';
import type { Facts } from '../../src/facts/facts.ts';

export type Operator = '<' | '<=' | '>' | '>=' | '===' | '!==';
export type Way = 'flipped' | 'moved';

/** A comparison of the source. */
export interface Site {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly operator: Operator;
  /** As it is written. */
  readonly text: string;
}

/** What becomes of an operator: the opposite; and, of those with a limit, whether the limit itself passes. */
export const CHANGED: Readonly<Record<Way, Readonly<Partial<Record<Operator, Operator>>>>> = {
  flipped: { '<': '>=', '>=': '<', '>': '<=', '<=': '>', '===': '!==', '!==': '===' },
  moved: { '<': '<=', '<=': '<', '>': '>=', '>=': '>' },
};

/** Comparisons met, each with whether its two sides were ever equal: only then does it matter on which side a limit is. */
export type Met = Map<number, boolean>;

/** A check that was run, with what it met and what it found. */
export interface Ran {
  readonly check: Check;
  readonly bench: Bench;
  readonly met: Met;
  readonly faults: readonly Fault[];
}

/** More of one comparison in one judgement is a loop without an end, which no suite would wait for. */
const ENDLESS = 2_000_000;

export class Switch {
  readonly sites: Site[] = [];
  #active: number | undefined;
  #as: Operator = '<';
  #times = 0;
  #met: Met | undefined;
  #ran: Ran[] | undefined;
  #facts: Facts[] = [];
  #derived = 0;

  /** Called by each instrumented file when it is loaded: the number of its first comparison. */
  register(sites: readonly Site[]): number {
    const first = this.sites.length;
    this.sites.push(...sites);
    return first;
  }

  compare(site: number, operator: Operator, a: unknown, b: unknown): boolean {
    if (this.#met && !(this.#met.get(site) ?? false)) this.#met.set(site, a === b);
    if (site !== this.#active) return plain(operator, a, b);
    this.#times += 1;
    if (this.#times > ENDLESS) throw new Error('a loop without an end');
    return plain(this.#as, a, b);
  }

  /** Each check of the registry, so that it is put on record what it meets. */
  watched(checks: readonly Check[]): readonly Check[] {
    return checks.map((check) => ({ ...check, run: (bench: Bench) => this.#watch(check, bench) }));
  }

  #watch(check: Check, bench: Bench): readonly Fault[] {
    if (!this.#ran) return check.run(bench);
    const outer = this.#met;
    const met: Met = new Map();
    this.#met = met;
    try {
      const faults = check.run(bench);
      this.#ran.push({ check, bench, met, faults });
      return faults;
    } finally {
      this.#met = outer;
    }
  }

  /** What is met while something is done: by each check, and outside of any. */
  record(what: () => void): { readonly ran: readonly Ran[]; readonly outside: Met } {
    const [ran, outside]: [Ran[], Met] = [[], new Map()];
    [this.#ran, this.#met, this.#facts] = [ran, outside, []];
    try {
      what();
    } finally {
      [this.#ran, this.#met] = [undefined, undefined];
    }
    return { ran, outside };
  }

  /** Nothing is derived from what a check says: facts of a workspace are derived once, and lent to each mutant tried on it. */
  derived(facts: () => Facts): Facts {
    if (this.#ran) {
      const made = facts();
      this.#facts.push(made);
      return made;
    }
    const kept = this.#active === undefined ? undefined : this.#facts[this.#derived++];
    return kept ? lent(kept) : facts();
  }

  /** Does something with one comparison changed. */
  with<T>(site: number, as: Operator, what: () => T): T {
    [this.#active, this.#as, this.#times, this.#derived] = [site, as, 0, 0];
    try {
      return what();
    } finally {
      this.#active = undefined;
    }
  }
}

/** The same facts with a record of their own of what has been looked at. */
function lent(facts: Facts): Facts {
  const consulted = new Set<string>();
  return {
    ...facts,
    read(reader) {
      const reading = facts.read(reader);
      for (const id of reading.inputs) consulted.add(id);
      return reading;
    },
    consulted() {
      // What is put in while a set is gone through is gone through too.
      const seen = new Set(consulted);
      for (const id of seen) for (const input of facts.fact(id)?.inputs ?? []) seen.add(input);
      return seen;
    },
  };
}

function plain(operator: Operator, a: unknown, b: unknown): boolean {
  const [x, y] = [a as number, b as number];
  switch (operator) {
    case '===':
      return a === b;
    case '!==':
      return a !== b;
    case '<':
      return x < y;
    case '<=':
      return x <= y;
    case '>':
      return x > y;
    case '>=':
      return x >= y;
  }
}

declare global {
  var platenSwitch: Switch;
}

globalThis.platenSwitch = new Switch();
