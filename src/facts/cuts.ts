/** Cuts of a body by name: cavities, holes and channels, and which of them are meant to meet. */
import type { Length } from '../units/quantity.ts';
import type { Use } from './facts.ts';
import type { Leaf } from './leaf.ts';
import { namesOf } from './row.ts';
import type { Model, ModelSpec } from './spec.generated.ts';

export type CutKind = 'cavity' | 'hole' | 'channel';
export type CutId = `${CutKind}.${string}`;

export interface Cut {
  readonly kind: CutKind;
  readonly id: string;
  /** The number that says where it lies across. */
  readonly place: Leaf<Length>;
  readonly spec: {
    readonly title?: Leaf<string>;
    readonly setup: Leaf<string>;
    readonly from?: Leaf<string>;
    readonly depth?: Leaf<Length>;
    readonly floor?: Leaf<Length>;
    /** How much deeper at the neck end; of a channel, at its end. */
    readonly falls?: Leaf<Length>;
    readonly into?: readonly Leaf<string>[];
  };
}

/** In the order of the spec. */
export function cutsOf(spec: ModelSpec): readonly Cut[] {
  const known = cutsBySpec.get(spec);
  if (known) return known;
  const cuts = [
    ...namesOf(spec.cavities).map((id) => cut('cavity', id, spec.cavities![id]!, spec.cavities![id]!.at)),
    ...namesOf(spec.holes).map((id) => cut('hole', id, spec.holes![id]!, spec.holes![id]!.at)),
    ...namesOf(spec.channels).map((id) => cut('channel', id, spec.channels![id]!, spec.channels![id]!.start)),
  ];
  cutsBySpec.set(spec, cuts);
  return cuts;
}

/** Asked for thousands of times while a model is checked, and a spec is never written to. */
const cutsBySpec = new WeakMap<ModelSpec, readonly Cut[]>();

const cut = (kind: CutKind, id: string, spec: Cut['spec'], at: Model.Point): Cut => ({ kind, id, place: at.x, spec });

export const isCavity = ({ kind }: Cut): boolean => kind === 'cavity';

/** As its facts begin: `cavity.controls`. */
export const cutId = ({ kind, id }: Pick<Cut, 'kind' | 'id'>): CutId => `${kind}.${id}`;

const TABLE = { cavity: 'cavities', hole: 'holes', channel: 'channels' } as const;

export const tableOf = ({ kind }: Pick<Cut, 'kind'>): (typeof TABLE)[CutKind] => TABLE[kind];

/** Read by name: `controls`, or `cavity.controls` where a hole is called so too. */
export const isNamed = (name: string, cut: Cut): boolean => name === cut.id || name === cutId(cut);

/** Whether two are meant to run into each other, said at either of them. */
export function meantToMeet(use: Use, a: Cut, b: Cut): boolean {
  const names = (cut: Cut, other: Cut) => (cut.spec.into ?? []).some((leaf) => isNamed(use(leaf), other));
  return names(a, b) || names(b, a);
}

/** Two cuts, the earlier of the spec first, with the id of the fact that says what wood is left between them. */
export interface Pair {
  readonly a: Cut;
  readonly b: Cut;
  readonly left: `left.${string}`;
}

const pair = (a: Cut, b: Cut): Pair => ({ a, b, left: `left.${cutId(a)}.${cutId(b)}` });

/** Every two cuts once, in the order of the spec. */
export function pairsOf(spec: ModelSpec): readonly Pair[] {
  const cuts = cutsOf(spec);
  return cuts.flatMap((a, i) => cuts.slice(i + 1).map((b) => pair(a, b)));
}

/** Those of one cut, in the same order. */
export function pairsWith(spec: ModelSpec, own: Cut): readonly Pair[] {
  const cuts = cutsOf(spec);
  const at = cuts.findIndex(({ kind, id }) => kind === own.kind && id === own.id);
  return cuts.flatMap((other, i) => (i < at ? pair(other, own) : i > at ? pair(own, other) : []));
}
