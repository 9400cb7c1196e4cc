/** Channels at their two ends: the hole they leave in the side of the body, and the wood they scar past what they run into. */
import type { Use } from '../../facts/facts.ts';
import { byDefinition } from '../../facts/facts.ts';
import type { CutId } from '../../facts/cuts.ts';
import { cutId, cutsOf, meantToMeet } from '../../facts/cuts.ts';
import { hole } from '../../facts/leaf.ts';
import { namesOf } from '../../facts/row.ts';
import type { Subject } from '../../facts/subject.ts';
import type { Point3, Tube } from '../../geometry/solid/solid.ts';
import { runsOn, throughSide } from '../../geometry/solid/tube-ends.ts';
import type { Length } from '../../units/quantity.ts';
import { lengthOfMm } from '../lengths.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';

/** What a channel drills past the last cut it comes through. */
export interface PastCut {
  readonly cut: CutId;
  readonly leaves: Point3;
  readonly by: Length;
}

declare module '../../facts/facts.ts' {
  interface DerivedFacts {
    /** Where its axis comes into the wood of the side; nothing where it starts inside, or comes in through a pocket’s mouth. */
    [id: `channel.${string}.mouth`]: Point3 | undefined;
    [id: `channel.${string}.runs-on`]: PastCut | undefined;
  }
}

const rule: Rule = (subject) =>
  namesOf(subject.spec.channels).flatMap((id) => [
    derivation({
      id: `channel.${id}.mouth`,
      label: `channel ${id}: the hole it leaves in the side`,
      formula: 'of one that starts outside the outline: where its axis crosses it, unless a cut lies open there',
      source: byDefinition,
      value: (use) => {
        const others = cutsOf(subject.spec).filter(({ kind }) => kind === 'cavity');
        const outline = use.fact('outline.polygon');
        return throughSide(
          tubeOf(use, id),
          outline,
          others.map((cut) => use.fact(`${cutId(cut)}.void`)),
        );
      },
    }),
    derivation({
      id: `channel.${id}.runs-on`,
      label: `channel ${id}: what it drills past the last cut it comes through`,
      formula: 'along its axis, from where it leaves the last of the cuts it runs into, to its tip',
      source: byDefinition,
      value: (use) => pastOf(subject, use, id),
    }),
  ]);
export default rule;

function tubeOf(use: Use, id: string): Tube {
  const own = use.fact(`channel.${id}.void`);
  return own.kind === 'tube' ? own : use(hole(`channels.${id}`));
}

/** Cuts that are said to meet it, at either of the two. */
function pastOf({ spec }: Subject, use: Use, id: string): PastCut | undefined {
  const cuts = cutsOf(spec);
  const own = cuts.find((cut) => cut.kind === 'channel' && cut.id === id)!;
  const met = cuts.filter((cut) => cut !== own && meantToMeet(use, own, cut));
  const past = runsOn(
    tubeOf(use, id),
    met.map((cut) => use.fact(`${cutId(cut)}.void`)),
  );
  return past && { cut: cutId(met[past.past]!), leaves: past.leaves, by: lengthOfMm(past.mm) };
}
