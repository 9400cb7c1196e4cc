/**
 * What a released model would say today: its own spec as it was frozen, with the plant and the formulas as they are now. What
 * moved is what a change of the plant, or of this program, does to models that are already on the floor.
 */
import { compileAll } from './compile.ts';
import type { Host } from './host/host.ts';
import { sameCardKey } from './release/keys.ts';
import type { Release } from './release/record.ts';
import { statesOf } from './facts/state.ts';
import type { FactState } from './facts/state.ts';
import { formatPlain } from './units/format.ts';
import type { Quantity } from './units/quantity.ts';
import { isError } from './compile.ts';

export interface Moved {
  readonly fact: string;
  readonly was: string;
  readonly now: string;
  /** By how much, in the unit of the fact; absent where it is no number. */
  readonly by?: string;
  /** Share of its own limits, where it had some. */
  readonly ofTolerance?: number;
}

export interface Recomputed {
  readonly release: Release;
  /** Errors it would have today: it could not be released again. */
  readonly errors: readonly string[];
  /** Right hand first, each fact once. */
  readonly moved: readonly Moved[];
  /** Stations whose card would read otherwise. */
  readonly stations: readonly string[];
}

export function recompute(host: Host, release: Release, on: string): Recomputed {
  const file = `models/${release.model}.yaml`;
  // JSON is YAML: the frozen spec is read like every other.
  const text = new TextEncoder().encode(release.spec);
  const then: Host = {
    ...host,
    list: (dir) => [
      ...new Set([...host.list(dir).filter((path) => !isModel(path)), ...(dir === 'models' ? [file] : [])]),
    ],
    read: (path) => (path === file ? text : host.read(path)),
  };
  const compiled = compileAll(then, on);
  const model = compiled.models.find(({ id }) => id === release.model)!;
  const errors = [...compiled.checked.findings, ...model.findings].filter(isError).map(({ what }) => what);
  const moved = new Map<string, Moved>();
  for (const { subject, facts } of model.hands) {
    const now = new Map(statesOf(facts, subject).map((fact) => [fact.id, fact]));
    for (const was of release.facts[subject.hand] ?? []) {
      const one = movedFrom(was, now.get(was.id));
      if (one && !moved.has(was.id)) moved.set(was.id, one);
    }
  }
  const stations = release.cards
    .filter((card) => model.cards.every((other) => other.code !== card.code || !sameCardKey(other.card.key, card.key)))
    .map(({ station, key }) => (key.hand === 'left' ? `${station}, left hand` : station));
  return { release, errors, moved: [...moved.values()], stations: errors.length > 0 ? [] : stations };
}

/** A model's own file: bases and the plant stay. */
const isModel = (path: string): boolean => /^models\/[^/]+\.yaml$/.test(path);

function movedFrom(was: FactState, now: FactState | undefined): Moved | undefined {
  if (!now) return { fact: was.id, was: was.text, now: 'none' };
  if (was.text === now.text) return undefined;
  const moved = { fact: was.id, was: was.text, now: now.text };
  if (!was.number || !now.number || was.number.kind !== now.number.kind) return moved;
  const { value, low, high, unit, decimals } = was.number;
  // Of a number whose limits moved and not its nominal, what they moved by.
  const { number } = now;
  const differences = [
    number.value - value,
    ...(low === undefined || number.low === undefined ? [] : [number.low - low]),
    ...(high === undefined || number.high === undefined ? [] : [number.high - high]),
  ];
  const difference = differences.reduce((most, one) => (Math.abs(one) > Math.abs(most) ? one : most));
  const q = { kind: was.number.kind, value: difference, unit, decimals } as Quantity;
  const by = `${difference > 0 ? '+' : ''}${formatPlain(q, unit, Math.max(decimals, 2))}`;
  const width = low === undefined || high === undefined ? 0 : high - low;
  return { ...moved, by, ...(width > 0 ? { ofTolerance: difference / width } : {}) };
}
