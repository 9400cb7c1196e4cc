/** Pairs of cuts whose place to each other matters, each with the word of the line that says how near they must be. */
import type { Cut } from './cuts.ts';
import { cutsOf, meantToMeet, pairsOf } from './cuts.ts';
import type { Use } from './facts.ts';
import { wanted } from './row.ts';
import type { ModelSpec } from './spec.generated.ts';

export type PairWord = 'neck-to-bridge' | 'back-to-top';

export interface PlacePair {
  readonly word: PairWord;
  readonly a: Cut;
  /** The one that is placed by the other: the bridge's hole, the later cut. */
  readonly b: Cut;
}

/** The pairs of this body. */
export function placePairs(spec: ModelSpec, use: Use): readonly PlacePair[] {
  const cuts = cutsOf(spec);
  // A neck that runs through has no pocket.
  const pocket = wanted(spec.neck, 'neck').pocket;
  const name = pocket && use(pocket);
  const necks = cuts.filter(({ kind, id }) => kind === 'cavity' && id === name);
  const fittings = cuts.filter((cut) => cut.kind === 'hole' && carriesStrings(spec, use, cut));
  return [
    ...necks.flatMap((a) => fittings.map((b) => ({ word: 'neck-to-bridge' as const, a, b }))),
    ...pairsOf(spec)
      .filter(({ a, b }) => use(a.spec.setup) !== use(b.spec.setup) && meantToMeet(use, a, b))
      .map(({ a, b }) => ({ word: 'back-to-top' as const, a, b })),
  ];
}

/** Studs of the bridge wherever they are drilled from; bushings and pilots of the top. */
function carriesStrings(spec: ModelSpec, use: Use, { id }: Cut): boolean {
  const { use: what, setup } = spec.holes![id]!;
  return use(what) === 'stud' || (use(setup) === 'top' && ['bushing', 'pilot'].includes(use(what)));
}
