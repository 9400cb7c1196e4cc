/** Where each card lies in the published tree. Links are relative, so that the tree works from a disk. */
import type { CardKey } from '../cards/card.ts';
import type { PostedCard } from './input.ts';

/** `sizing`, `sizing-left`; with the finishes where a station has several cards of one hand. */
export function cardName(key: CardKey, siblings: readonly PostedCard[]): string {
  const hand = key.hand === 'left' ? '-left' : '';
  const alike = siblings.filter(({ card }) => card.key.station === key.station && card.key.hand === key.hand);
  return `${key.station}${hand}${alike.length > 1 ? `-${key.finishes.join('-')}` : ''}`;
}

export function sameKey(a: CardKey, b: CardKey): boolean {
  return (
    a.model === b.model && a.hand === b.hand && a.station === b.station && a.finishes.join(' ') === b.finishes.join(' ')
  );
}

/** From the page at `from` to the file at `to`, both paths in the tree. */
export function relative(from: string, to: string): string {
  const here = from.split('/').slice(0, -1);
  const there = to.split('/');
  let shared = 0;
  while (shared < here.length && shared < there.length - 1 && here[shared] === there[shared]) shared++;
  return [...here.slice(shared).map(() => '..'), ...there.slice(shared)].map(encodeURIComponent).join('/');
}

/** Order of cards: by the route, then right hand before left, then as given. */
export function inRouteOrder(cards: readonly PostedCard[], route: readonly string[]): PostedCard[] {
  const rank = ({ card }: PostedCard) => {
    const at = route.indexOf(card.key.station);
    return (at < 0 ? route.length : at) * 2 + (card.key.hand === 'left' ? 1 : 0);
  };
  return cards.toSorted((a, b) => rank(a) - rank(b));
}
