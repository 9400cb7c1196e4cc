/** The drill of a channel stops in the cut it runs into: it goes neither into the wall behind it nor out of the side. */
import type { Check, Fault, Bench } from '../check.ts';
import { look } from '../check.ts';
import { meantToMeet, pairsOf } from '../../facts/cuts.ts';
import { namesOf } from '../../facts/row.ts';
import { contains } from '../../geometry/nearness.ts';
import { say, sayPoint } from '../say.ts';
import { bore, cut, cuts, ring, section, slab } from '../sketch.ts';

const check: Check = {
  id: 'channel-runs-on',
  stage: 'derived',
  severity: 'error',
  why: 'The long drill scars the far wall, or comes out of the side of the body, where everybody sees it.',
  mend: 'End the channel inside the last cavity it runs into.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'end: { x: 98, y: -74 }',
    fails: 'end: { x: 152, y: -159.4 }',
  },
  sketch: section(
    slab({ right: 56 }),
    cuts(cut({ from: 8, to: 24, depth: 9 }), bore({ from: [20, 7], to: [56, 12], width: 3, end: 'open' })),
    ring(55, 12, 3.4, 'upper-left'),
  ),
  run: (bench) => namesOf(bench.subject.spec.channels).flatMap((id) => fault(bench, id)),
};
export default check;

/** Where it misses one of them that is the finding: it stops too soon, not too late. */
const missesOne = ({ subject: { spec }, facts }: Bench, id: string): boolean =>
  pairsOf(spec)
    .filter(({ a, b }) => [a, b].some((cut) => cut.kind === 'channel' && cut.id === id))
    .some(({ a, b, left }) =>
      look(facts, (use) => {
        const wood = meantToMeet(use, a, b) ? use.fact(left)?.wood : undefined;
        return meantToMeet(use, a, b) && (wood === undefined || (wood.high ?? wood.value) >= 0);
      }),
    );

function fault(bench: Bench, id: string): Fault[] {
  const {
    subject: { spec, hand },
    facts,
  } = bench;
  if (missesOne(bench, id)) return [];
  const { end, diameter, into } = spec.channels![id]!;
  const seen = look(facts, (use) => {
    const tube = use.fact(`channel.${id}.void`);
    if (tube.kind !== 'tube') return undefined;
    const { xMm: x, yMm: y } = tube.to;
    return {
      past: use.fact(`channel.${id}.runs-on`),
      wide: use(diameter),
      tip: { x, y },
      outside: !contains(use.fact('outline.polygon'), x, y),
    };
  });
  // A drill guided by hand may touch the far wall: by no more than it is wide; common practice, no source.
  if (!seen?.past || (!seen.outside && seen.past.by.value <= seen.wide.value)) return [];
  const { past, tip, outside, wide } = seen;
  const [kind, ...rest] = past.cut.split('.');
  const name = rest.join('.');
  const leaves = { x: past.leaves.xMm, y: past.leaves.yMm };
  const table = ({ cavity: 'cavities', hole: 'holes', channel: 'channels' } as const)[kind as 'cavity'];
  return [
    {
      at: end.x.id,
      what: `The channel ${id} leaves the ${kind} ${name} at ${sayPoint(leaves, hand)} and goes on for ${say(past.by, past.by.value)}, ${
        outside ? 'through the side of the body' : 'into the wood behind it'
      }, to ${sayPoint(tip, hand)}.`,
      mend: `End it inside ${name}, before ${sayPoint(leaves, hand)}${outside ? '' : `; ${say(wide, wide.value)} past it, as much as the drill is wide, would pass`}.`,
      against: [
        {
          at: (table === 'cavities' ? spec.cavities : spec.holes)?.[name]?.at.x.id ?? end.y.id,
          text: `where ${name} lies`,
        },
        ...(into?.[0] ? [{ at: into[0].id, text: `what ${id} is meant to run into` }] : []),
      ],
      hangsOn: [`${past.cut}.void`],
    },
  ];
}
