/** A cutter goes down into the wood no faster than it goes along in it. */
import { namesOf } from '../../facts/row.ts';
import type { Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { sayAs } from '../say.ts';
import { cut, cuts, cutter, push, ring, section, slab } from '../sketch.ts';

const check: Check = {
  id: 'plunge-too-fast',
  stage: 'spec',
  severity: 'error',
  why: 'Going straight down it cuts with the middle of its end, which hardly turns, and clears its chips worst: it burns, or breaks and flies.',
  mend: 'Let it plunge slower than it feeds, as its maker says; without a word of the maker a half to a third of the feed is common practice, no source.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'plunge: 1.2 m/min',
    fails: 'plunge: 12 m/min',
  },
  sketch: section(
    slab(),
    cuts(cut({ from: 24, to: 36, depth: 8 })),
    cutter({ x: 30, tip: 8, width: 12, flutes: 11 }),
    push([44, -6], [44, 5]),
    ring(30, 8, 2.8, 'lower-left'),
  ),
  run: ({ subject: { plant }, facts }) =>
    namesOf(plant.cutters).flatMap((id): Fault[] => {
      const { feed, plunge } = plant.cutters![id]!;
      const seen = feed && plunge && look(facts, (use) => ({ feed: use(feed), plunge: use(plunge) }));
      if (!seen || seen.plunge.value <= seen.feed.value) return [];
      return [
        {
          at: plunge.id,
          what: `${id} is to go down into the wood at ${sayAs(seen.plunge, seen.plunge.value)}, faster than it goes along in it: ${sayAs(seen.feed, seen.feed.value)}.`,
          mend: `Let it go down at ${sayAs(seen.plunge, seen.feed.value / 2, Math.max(seen.plunge.decimals, seen.feed.decimals))} or slower, as its maker says.`,
          against: [{ at: feed.id, text: 'its feed' }],
        },
      ];
    }),
};
export default check;
