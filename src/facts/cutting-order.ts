/** In which order a body is cut: set-up by set-up, and in each the cavities by what they are for, then holes, then channels. */
import type { Cut } from './cuts.ts';
import { cutsOf } from './cuts.ts';
import type { Use } from './facts.ts';
import { namesOf } from './row.ts';
import type { ModelSpec } from './spec.generated.ts';

export type SetupId = 'glue-face' | 'back' | 'top';

export const setupOrder: readonly SetupId[] = ['glue-face', 'back', 'top'];

/** Order of cutting; common practice of the trade, no source. */
const ORDER = ['chamber', 'springs', 'controls', 'recess', 'pickup', 'bridge', 'neck', 'other'] as const;

/** Cavities of a set-up in the order they are cut. */
export function cavitiesInOrder({ cavities }: ModelSpec, use: Use, setup: SetupId): readonly string[] {
  const place = (name: string) => ORDER.indexOf(use(cavities![name]!.purpose));
  return namesOf(cavities)
    .filter((name) => use(cavities![name]!.setup) === setup)
    .toSorted((a, b) => place(a) - place(b));
}

/** All cuts of a set-up in the order they are made. */
export function cutsInOrder(spec: ModelSpec, use: Use, setup: SetupId): readonly Cut[] {
  const cuts = cutsOf(spec);
  const cavities = cavitiesInOrder(spec, use, setup).map((name) =>
    cuts.find(({ kind, id }) => kind === 'cavity' && id === name)!,
  );
  const others = cuts.filter((cut) => cut.kind !== 'cavity' && use(cut.spec.setup) === setup);
  return [...cavities, ...others];
}
