/** Cards are the same place on the wall where model, hand, finishes and station are. */
import type { CardKey } from '../cards/card.ts';

export const sameCardKey = (a: CardKey, b: CardKey): boolean =>
  a.model === b.model && a.hand === b.hand && a.station === b.station && a.finishes.join(' ') === b.finishes.join(' ');
