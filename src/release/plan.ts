/** What a release would change at the stations, and why it may not be made. Pure. */
import type { ReleaseAct, Start, UnderWay } from './entries.ts';
import { sameCardKey } from './keys.ts';
import type { Release, ReleasedCard } from './record.ts';
import type { Known } from './wall.ts';

export interface Asked {
  readonly on: string;
  readonly name: string;
  readonly reason: string;
  readonly from: Start;
  readonly underWay?: UnderWay;
  readonly oldUntil?: string;
}

export interface Change {
  readonly station: string;
  readonly hand: 'right' | 'left';
  readonly what: 'same' | 'new' | 'changed' | 'gone';
  /** Code to pull. */
  readonly old?: string;
  /** Code to post. */
  readonly new?: string;
}

/** Against the release before, in the order of the cards; what is gone comes last. */
export function changesOf(release: Release, before: Known | undefined): readonly Change[] {
  const old = before?.record.cards ?? [];
  const keyed = (card: ReleasedCard, cards: readonly ReleasedCard[]) =>
    cards.find((other) => sameCardKey({ ...other.key, finishes: [] }, { ...card.key, finishes: [] }));
  const now = release.cards.map((card): Change => {
    const at = { station: card.station, hand: card.key.hand };
    const was = keyed(card, old);
    if (!was) return { ...at, what: 'new', new: card.code };
    if (was.code === card.code) return { ...at, what: 'same', new: card.code };
    return { ...at, what: 'changed', old: was.code, new: card.code };
  });
  const gone = old
    .filter((card) => !keyed(card, release.cards))
    .map((card): Change => ({ station: card.station, hand: card.key.hand, what: 'gone', old: card.code }));
  return [...now, ...gone];
}

/** A release of that letter with the very same cards: what is new is how they are worded or laid out. */
export function sameCards(release: Release, known: readonly Known[]): Known | undefined {
  const same = known.find(({ released }) => released.model === release.model && released.revision === release.revision);
  return same && changesOf(release, same).every(({ what }) => what === 'same') ? same : undefined;
}

/** Why it is refused, in a sentence with what would mend it; undefined where it may be made. */
export function refusal(
  release: Release,
  known: readonly Known[],
  asked: Asked,
  later: (a: string, b: string) => boolean,
): string | undefined {
  const own = known.filter(({ released }) => released.model === release.model);
  const last = own.at(-1);
  const same = own.find(({ released }) => released.revision === release.revision);
  if (same) {
    const changes = changesOf(release, same).filter(({ what }) => what !== 'same');
    return `${release.model}@${release.revision} is released already, and ${changes.length} of its cards have changed since: give it the next letter.`;
  }
  if (last && !later(release.revision, last.released.revision))
    return `The last release of ${release.model} is ${last.released.revision}: ${release.revision} does not come after it.`;
  if (last && asked.underWay === undefined)
    return 'Say what becomes of bodies under way: --under-way finish-on-old, use-as-is, rework or scrap.';
  if (!last && asked.underWay !== undefined)
    return `It is the first release of ${release.model}: nothing is under way.`;
  if (asked.underWay === 'finish-on-old' && asked.oldUntil === undefined)
    return 'Bodies finished on the old cards need a last day for them: --old-until YYYY-MM-DD.';
  if (asked.oldUntil !== undefined && asked.underWay !== 'finish-on-old')
    return '--old-until goes with --under-way finish-on-old.';
  const begins = 'date' in asked.from ? asked.from.date : asked.on;
  if (begins < asked.on)
    return `A release cannot have been in force before it was made: ${begins} is before ${asked.on}.`;
  if (asked.oldUntil !== undefined && asked.oldUntil < begins)
    return `The old cards would end on ${asked.oldUntil}, before the new ones begin on ${begins}.`;
  if (last && asked.on < last.released.on)
    return `The last release of ${release.model} was made on ${last.released.on}, after ${asked.on}.`;
  return orderOverlap(asked, last);
}

/** Orders of a release that begins with one come after those of the release before. */
function orderOverlap({ from }: Asked, last: Known | undefined): string | undefined {
  const before = last?.released.from;
  if (!before || !('order' in from) || !('order' in before) || from.order > before.order) return undefined;
  return `The release before begins with order ${before.order}: this one must begin with a later one.`;
}

export const releaseAct = (
  release: Release,
  { on, name, reason, from, underWay, oldUntil }: Asked,
  record: ReleaseAct['record'],
): ReleaseAct => ({
  act: 'release',
  on,
  name,
  reason,
  model: release.model,
  revision: release.revision,
  record,
  from,
  ...(underWay === undefined ? {} : { underWay }),
  ...(oldUntil === undefined ? {} : { oldUntil }),
});
