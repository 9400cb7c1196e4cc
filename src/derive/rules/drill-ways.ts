/** How the drill of a channel gets to its start, and how long it must be for the whole of the way. */
import type { Use } from '../../facts/facts.ts';
import { byDefinition } from '../../facts/facts.ts';
import { cutId, cutsOf } from '../../facts/cuts.ts';
import { hole } from '../../facts/leaf.ts';
import { namesOf } from '../../facts/row.ts';
import type { Subject } from '../../facts/subject.ts';
import type { WayOut } from '../../geometry/solid/way-out.ts';
import { wayOut } from '../../geometry/solid/way-out.ts';
import type { Length } from '../../units/quantity.ts';
import { lengthOfMm } from '../lengths.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';

declare module '../../facts/facts.ts' {
  interface DerivedFacts {
    [id: `channel.${string}.way-out`]: WayOut;
    [id: `channel.${string}.drill-length`]: Length;
  }
}

const rule: Rule = (subject) =>
  namesOf(subject.spec.channels).flatMap((id) => [
    derivation({
      id: `channel.${id}.way-out`,
      label: `channel ${id}: the way of its drill before it`,
      formula:
        'its axis carried on behind the start, through what lies open, to the side of the body, over the highest plane of its top, or under its back',
      source: byDefinition,
      value: (use) => wayOf(subject, use, id),
    }),
    derivation({
      id: `channel.${id}.drill-length`,
      label: `channel ${id}: how much of its drill goes in`,
      formula: 'length of the channel + way of the drill before it, where that comes out of the body',
      source: byDefinition,
      value: (use) => {
        const { mm, stuck } = use.fact(`channel.${id}.way-out`);
        const long = use.fact(`channel.${id}.length`);
        return stuck ? long : { ...long, value: long.value + lengthOfMm(mm).value };
      },
    }),
  ]);
export default rule;

function wayOf({ spec }: Subject, use: Use, id: string): WayOut {
  const tube = use.fact(`channel.${id}.void`);
  if (tube.kind !== 'tube') return use(hole(`channels.${id}`));
  const cuts = cutsOf(spec).flatMap((cut) => {
    const own = use.fact(`${cutId(cut)}.void`);
    return own.kind === 'pocket' ? [own] : [];
  });
  return wayOut(tube, use.fact('outline.polygon'), cuts, use.fact('body.shaped').heightMm);
}
