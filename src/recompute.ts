/**
 * What a released model would say today: its own spec as it was frozen, with the plant and the formulas as they are now. What
 * moved is what a change of the plant, or of this program, does to models that are already on the floor.
 */
import { stateOfModel, stateOfRelease, withSpec } from './comparing.ts';
import { compileAll, isError } from './compile.ts';
import { changedFacts } from './diff/changed-facts.ts';
import type { FactChange } from './diff/changed-facts.ts';
import { moveOf, moveUnit } from './diff/move.ts';
import type { Host } from './host/host.ts';
import { sameCardKey } from './release/keys.ts';
import type { Release } from './release/record.ts';
import { formatPlain } from './units/format.ts';

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
  // JSON is YAML: the frozen spec is read like every other.
  const spec = new TextEncoder().encode(release.spec);
  const compiled = compileAll(withSpec(host, release.model, spec), on);
  const model = compiled.models.find(({ id }) => id === release.model)!;
  const errors = [...compiled.checked.findings, ...model.findings].filter(isError).map(({ what }) => what);
  const [then, today] = [stateOfRelease(release), stateOfModel(model, compiled.checked)];
  const has = { old: then.plantHas, new: today.plantHas };
  const moved = new Map<string, Moved>();
  for (const [hand, facts] of today.facts)
    for (const change of changedFacts(then.facts.get(hand) ?? new Map(), facts, has).values()) {
      const one = movedIn(change);
      if (one && !moved.has(change.id)) moved.set(change.id, one);
    }
  const stations = release.cards
    .filter((card) => model.cards.every((other) => other.code !== card.code || !sameCardKey(other.card.key, card.key)))
    .map(({ station, key }) => (key.hand === 'left' ? `${station}, left hand` : station));
  return { release, errors, moved: [...moved.values()], stations: errors.length > 0 ? [] : stations };
}

/** Of what was there and reads otherwise. */
function movedIn({ id, old, new: now }: FactChange): Moved | undefined {
  if (!old || old.text === now?.text) return undefined;
  const moved = { fact: id, was: old.text, now: now?.text ?? 'none' };
  const move = old.number && now?.number && moveOf(old.number, now.number);
  if (!move) return moved;
  const { decimals } = old.number;
  const unit = moveUnit(move.kind, old.number);
  const size = move.limitBy ?? move.by;
  const by = formatPlain({ kind: move.kind, value: size, unit, decimals }, unit, Math.max(decimals, 2));
  const share = move.ofTolerance === undefined ? {} : { ofTolerance: Math.sign(size) * move.ofTolerance };
  return { ...moved, by: `${size > 0 ? '+' : ''}${by}`, ...share };
}
