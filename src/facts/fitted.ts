/** Parts of the hardware table as a model fits them: into a cavity, a hole or a channel, onto a face. */
import type { Length } from '../units/quantity.ts';
import type { CutId } from './cuts.ts';
import type { Use } from './facts.ts';
import type { Leaf } from './leaf.ts';
import { namesOf } from './row.ts';
import type { Model, ModelSpec } from './spec.generated.ts';

export type FittedKind = 'cavity' | 'hole' | 'channel' | 'fitting';
export type FittedId = `${FittedKind}.${string}`;

export interface Fitted {
  readonly kind: FittedKind;
  /** Name of the cavity, hole, channel or fitting. */
  readonly id: string;
  /** The row of the plant it is. */
  readonly hardware: Leaf<string>;
  readonly title: Leaf<string> | undefined;
  /** The number that says where it lies across. */
  readonly place: Leaf<Length>;
}

/** As its facts go on: `fitted.hole.volume-shaft`. */
export const fittedId = ({ kind, id }: Pick<Fitted, 'kind' | 'id'>): FittedId => `${kind}.${id}`;

interface Named {
  readonly title?: Leaf<string>;
  readonly hardware?: Leaf<string>;
}

/** In the order of the spec. */
export const fittedOf = (spec: ModelSpec): readonly Fitted[] => [
  ...ofTable('cavity', spec.cavities, ({ at }) => at),
  ...ofTable('hole', spec.holes, ({ at }) => at),
  ...ofTable('channel', spec.channels, ({ start }) => start),
  ...ofTable('fitting', spec.fittings, ({ at }) => at),
];

/** What has a place of its own: what is drawn through a channel has none. */
export const placedOf = (spec: ModelSpec): readonly Fitted[] => fittedOf(spec).filter(({ kind }) => kind !== 'channel');

/** What goes into a hole or a cavity: not what lies on a face. */
export const insideOf = (spec: ModelSpec): readonly Fitted[] =>
  placedOf(spec).filter(({ kind, id }) => kind !== 'fitting' || spec.fittings![id]!.in !== undefined);

/** The cavity it goes into with its body; nothing of what lies on a face or stands in a hole of its own. */
export function cavityOfPart(spec: ModelSpec, use: Use, { kind, id }: Pick<Fitted, 'kind' | 'id'>): CutId | undefined {
  if (kind === 'cavity') return `cavity.${id}`;
  if (kind === 'hole') return use.fact(`fitted.hole.${id}.cavity`);
  const inside = kind === 'fitting' ? spec.fittings![id]!.in : undefined;
  return inside && `cavity.${use(inside)}`;
}

function ofTable<T extends Named>(
  kind: FittedKind,
  table: Readonly<Record<string, T>> | undefined,
  placeOf: (one: T) => Model.Point,
): readonly Fitted[] {
  return namesOf(table).flatMap((id) => {
    const one = table![id]!;
    const { hardware, title } = one;
    return hardware ? [{ kind, id, hardware, title, place: placeOf(one).x }] : [];
  });
}

/** Two parts in one cavity or on one face, and how far they are apart; less than nothing: how far one reaches into the other. */
export interface Beside {
  readonly a: FittedId;
  readonly b: FittedId;
  readonly apart: Length;
}

/** A place where a part takes a hole, mm from the origin of the body, and the hole drawn nearest to it on that face. */
export interface MountPlace {
  readonly mount: string;
  readonly xMm: number;
  readonly yMm: number;
  readonly hole: string | undefined;
  readonly off: Length | undefined;
}
