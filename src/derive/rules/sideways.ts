/** How far two cuts may lie off sideways, one against the other: of each pair whose place to each other matters. */
import { practice } from '../../facts/facts.ts';
import type { Use } from '../../facts/facts.ts';
import type { Cut } from '../../facts/cuts.ts';
import { cutId } from '../../facts/cuts.ts';
import { placePairs } from '../../facts/place-pairs.ts';
import type { PlacePair } from '../../facts/place-pairs.ts';
import type { Subject } from '../../facts/subject.ts';
import { bounds } from '../../geometry/measure.ts';
import { withCauses } from '../../units/arithmetic.ts';
import type { Length } from '../../units/quantity.ts';
import { lengthOfMm } from '../lengths.ts';
import type { Place } from '../location.ts';
import { apartCauses, sideOf, worstOf } from '../location.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';

/** A pair with how far it may lie off. */
export interface PairOff extends PlacePair {
  readonly off: Length;
}

declare module '../../facts/facts.ts' {
  interface DerivedFacts {
    /** All pairs of the body, as the line names them. */
    'sideways.pairs': readonly PairOff[];
  }
}

const rule: Rule = (subject) => [
  derivation({
    id: 'sideways.pairs',
    label: 'how far cuts that belong together may lie off sideways',
    formula: 'error of the machine at either cut, and of location on the way between their set-ups',
    source: practice('tolerance graph, no source'),
    value: (use) => placePairs(subject.spec, use).map((pair) => ({ ...pair, off: offOf(subject, use, pair) })),
  }),
];
export default rule;

/** At the worse of the two places. */
function offOf(subject: Subject, use: Use, { a, b }: PlacePair): Length {
  const at = [a, b].map((cut) => middleOf(use, cut));
  const options = at.map((place) => apartCauses(subject, use, sideOf(use, a), sideOf(use, b), place));
  return withCauses(lengthOfMm(0, 2), worstOf(options));
}

function middleOf(use: Use, cut: Cut): Place {
  const own = use.fact(`${cutId(cut)}.void`);
  if (own.kind === 'tube') return own.from;
  const { minX, maxX, minY, maxY } = bounds(own.region[0]!)!;
  return { xMm: (minX + maxX) / 2, yMm: (minY + maxY) / 2 };
}
