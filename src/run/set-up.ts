/** What a station must have at hand for a card, and what it is set up for by it. Pure. */
import type { ReleasedCard } from '../release/record.ts';
import type { MadeBy } from './made-by.ts';

/** In the order a station fetches them. */
export const FETCHED = ['jigs', 'fixtures', 'cutters', 'adhesives', 'tacks'] as const;
export type Fetched = (typeof FETCHED)[number];

export interface Needed {
  /** Id of a row of the plant, `cutters.mill-8`; of a program its number. */
  readonly id: string;
  readonly of: Fetched | 'programs';
  readonly title: string;
}

export function neededFor(card: ReleasedCard, by: MadeBy): readonly Needed[] {
  const rows = FETCHED.flatMap((table) =>
    [...new Set(card.names)]
      .filter((row) => row.startsWith(`${table}.`))
      .map((row): Needed => ({ id: row, of: table, title: by.text(`plant.${row}.title`) ?? row })),
  );
  const programs = card.reads
    .filter((id) => /^setups\.[^.]+\.program$/.test(id))
    .flatMap((id) => by.text(id) ?? [])
    .map((number): Needed => ({ id: number, of: 'programs', title: number }));
  const place = rows.findLastIndex(({ of }) => of === 'jigs' || of === 'fixtures') + 1;
  return [...rows.slice(0, place), ...programs, ...rows.slice(place)];
}

/** In a jig or on a fixture: another model means another one. */
export const isHeld = (card: ReleasedCard, by: MadeBy): boolean =>
  neededFor(card, by).some(({ of }) => of === 'jigs' || of === 'fixtures');

/**
 * What it is set up for, as one text: with the same text nothing is changed between two orders. It is what is fetched for it;
 * where nothing but a machine stands, as at the planer and the wide belt, the limits it is set to.
 */
export function setUpOf(card: ReleasedCard, by: MadeBy): string {
  const needed = neededFor(card, by);
  const limits = isHeld(card, by) ? [] : card.limits.map(({ what, text }) => `${what} ${text}`);
  return [...needed.map(({ of, id }) => `${of} ${id}`), ...limits].join('\n');
}
