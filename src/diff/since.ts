/** What became of each card since another state of its model, for the card itself: what is different, and where. */
import type { CardChanges } from '../cards/card.ts';
import type { Change } from './change.ts';
import { comparedHand } from './hand.ts';
import { toldOnce } from './once.ts';
import { handsOf } from './model-state.ts';
import type { ModelState } from './model-state.ts';

/** By content code, of the cards that changed or are new; of a model that was there before. */
export function changesSince(old: ModelState, now: ModelState): ReadonlyMap<string, CardChanges> {
  const { revision } = now;
  const since = old.revision;
  const changes = handsOf(now).flatMap((hand) =>
    comparedHand(hand, old, now).cards.flatMap(({ notice }): (readonly [string, CardChanges])[] => {
      if (notice?.new === undefined) return [];
      // Marked in each place, said in one.
      const lines = toldOnce(notice.changes);
      const shown = lines.toSorted((a, b) => rank(a) - rank(b)).slice(0, MOST);
      const at = notice.changes.flatMap((change) => change.at ?? []);
      return [
        [
          notice.new,
          {
            since,
            revision,
            lines: shown.map(({ line, also }) => ({ line, also })),
            more: lines.length - shown.length,
            at: [...new Set(at)],
          },
        ],
      ];
    }),
  );
  return new Map(changes);
}

/** Lines of the block on a card: what is longer is no longer read. */
const MOST = 5;

/** What a hand does and a gauge reads comes before what stands in lists and drawings. */
const ORDER = [
  'place',
  'key-number',
  'check',
  'step',
  'tool',
  'caution',
  'when-out',
  'sign-off',
  'note',
  'head',
  'row',
];
const rank = ({ is }: Change): number => (ORDER.includes(is) ? ORDER.indexOf(is) : ORDER.length);
