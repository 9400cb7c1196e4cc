/**
 * A leaf: one value as somebody wrote it, in a spec, a plant row or a published row, with where it stands.
 *
 * Its value is private. Only `Facts` opens it, and puts the use on record: so what a derived number says it came from is
 * what it was computed from.
 */
import type { Place } from '../findings/finding.ts';
import type { Certainty } from '../reference/certainty.ts';
import { Unavailable } from './unavailable.ts';

export type Writing =
  | { readonly kind: 'given'; readonly place: Place }
  | { readonly kind: 'plant'; readonly place: Place }
  /** Read off gauges: the first line of them. */
  | { readonly kind: 'measured'; readonly place: Place }
  | { readonly kind: 'published'; readonly source: string; readonly certainty: Certainty };

/** What the schema asks of a leaf beyond its form. */
export interface Asked {
  /** It names a row of this table. */
  readonly refers?: string;
  /** Outside of this, in base units, it was hardly meant: a slip of a digit or a unit. */
  readonly plausible?: Range;
  /** Outside of this there is no such thing. */
  readonly possible?: Range;
}

/** In base units, and as the schema writes it. */
export interface Range {
  readonly low: number;
  readonly high: number;
  readonly text: string;
}

export class Leaf<T> {
  /** Permanent name: the path in its file, `plant.` or `published.` before it where it is not the model's own. */
  readonly id: string;
  /** As written. */
  readonly text: string;
  readonly writing: Writing;
  readonly asked: Asked;
  readonly #value: T;

  constructor(id: string, text: string, writing: Writing, value: T, asked: Asked = {}) {
    this.id = id;
    this.text = text;
    this.writing = writing;
    this.asked = asked;
    this.#value = value;
  }

  /** For `Facts` alone. */
  static open<T>(leaf: Leaf<T>): T {
    return leaf.#value;
  }
}

const HOLE = Symbol('hole');

/**
 * Stands where something is missing or unreadable, so that the rest of the spec can still be derived and checked. Whatever
 * is asked or called of it is the same hole again. Opening it, going through it as a list or taking it for a number makes
 * the fact that wanted it unavailable, never wrong: it names what is missing, not what was looked for inside.
 */
export function hole(id: string): never {
  const stop = (): never => {
    throw new Unavailable([id]);
  };
  const proxy: unknown = new Proxy(() => undefined, {
    get: (_, key) => {
      if (key === HOLE) return id;
      if (key === Symbol.iterator || key === Symbol.toPrimitive) return stop;
      return typeof key === 'symbol' ? undefined : proxy;
    },
    apply: () => proxy,
  });
  return proxy as never;
}

/** The id of a hole; undefined of anything else. */
export function holeId(thing: unknown): string | undefined {
  return typeof thing === 'function' ? (thing as { [HOLE]?: string })[HOLE] : undefined;
}
