/** What hangs: the cards in force on a day, each once, with what is said of it, and what must come down. Pure. */
import { sameCardKey } from './keys.ts';
import type { DeviationAct, HoldAct, Start } from './entries.ts';
import type { Release, ReleasedCard } from './record.ts';
import { hangs } from './state.ts';
import type { Released, State } from './state.ts';

/** A release in the ledger with its record. */
export interface Known {
  readonly released: Released;
  readonly record: Release;
}

export interface Hanging {
  readonly card: ReleasedCard;
  readonly model: string;
  readonly title: string;
  /** The release whose stored pages are shown: the latest that has this content. */
  readonly of: Known;
  /** Revision with which this content began. */
  readonly since: string;
  /** Which orders, or bodies begun when, it is for; no bounds where it is for all. */
  readonly range: { readonly from?: Start; readonly to?: Start };
  /** Last day, where it hangs only to use up what was begun on it. */
  readonly until?: string;
  readonly holds: readonly HoldAct[];
  readonly deviations: readonly DeviationAct[];
}

export interface Down {
  readonly card: ReleasedCard;
  readonly title: string;
  readonly revision: string;
  readonly why: 'superseded' | 'withdrawn';
  readonly by?: string;
}

/** By station in the order of the latest release's route, then as released. */
export function hangingOn(known: readonly Known[], state: State): readonly Hanging[] {
  const inForce = known.filter(({ released }) => hangs(released));
  const route = [...new Set(inForce.toReversed().flatMap(({ record }) => record.cards.map(({ key }) => key.station)))];
  const place = ({ card }: Hanging) => route.indexOf(card.key.station);
  const hanging = inForce.flatMap((of) =>
    of.record.cards.flatMap((card): Hanging[] => {
      const others = inForce.filter(
        (other) => other !== of && other.released.model === of.released.model && carries(other, card),
      );
      // The same content under an older release is the same card: it is shown once, as the later one has it.
      if (others.some((other) => known.indexOf(other) > known.indexOf(of))) return [];
      const { standing } = of.released;
      const ends = (standing.is === 'run-out' || standing.is === 'current') && !nextCarries(of, card, known);
      const to = ends ? standing.to : undefined;
      const begun = takesOver(of, card, inForce) ? { from: of.released.from } : {};
      return [
        {
          card,
          model: of.record.model,
          title: of.record.title,
          of,
          since: sinceOf(of, card, known),
          range: { ...begun, ...(to ? { to } : {}) },
          ...(standing.is === 'run-out' ? { until: standing.until } : {}),
          holds: heldOf(card, of.record, state),
          deviations: deviationsOf(card, of.record, state),
        },
      ];
    }),
  );
  return hanging.toSorted((a, b) => place(a) - place(b));
}

const carries = ({ record }: Known, card: ReleasedCard): boolean =>
  record.cards.some((other) => other.code === card.code && sameCardKey(other.key, card.key));

/** Whether the release after it has the same card: then nothing ends. */
function nextCarries(of: Known, card: ReleasedCard, known: readonly Known[]): boolean {
  const next = known.slice(known.indexOf(of) + 1).find(({ released }) => released.model === of.released.model);
  return next !== undefined && carries(next, card);
}

/** Whether another card of that station and hand still hangs beside it, from a release before. */
const takesOver = (of: Known, card: ReleasedCard, inForce: readonly Known[]): boolean =>
  inForce
    .slice(0, inForce.indexOf(of))
    .some(
      (other) =>
        other.released.model === of.released.model &&
        other.record.cards.some(({ key, code }) => sameCardKey(key, card.key) && code !== card.code),
    );

/** The revision with which a card's content began: back through the releases that have it, without a gap. */
export function sinceOf(of: Known, card: ReleasedCard, known: readonly Known[]): string {
  const own = known.filter(({ released }) => released.model === of.released.model);
  let since = of.released.revision;
  for (let i = own.indexOf(of) - 1; i >= 0 && carries(own[i]!, card); i--) since = own[i]!.released.revision;
  return since;
}

/**
 * A thing is asked for where the card names it: a glue that is held stops no belt sander whose grit follows from it. What no
 * card of the model names is asked for wherever a number came from it.
 */
export function heldOf(card: ReleasedCard, of: Release, { holds }: State): readonly HoldAct[] {
  return holds.filter(({ table, held }) => {
    if (table === 'model') return held === of.model;
    const row = `${table}.${held}`;
    return of.cards.some(({ names }) => names.includes(row)) ? card.names.includes(row) : card.rows.includes(row);
  });
}

/** Other limits hold for those they were entered against: a card that was given new ones since goes by its own. */
export const deviationsOf = (card: ReleasedCard, { model }: Release, { deviations }: State): readonly DeviationAct[] =>
  deviations.filter(
    (one) => one.model === model && card.limits.some(({ fact, text }) => fact === one.fact && text === one.was),
  );

/** Cards once released that no longer hang: each code once, as it was last known. */
export function downOn(known: readonly Known[], state: State): readonly Down[] {
  const up = new Set(hangingOn(known, state).map(({ card }) => card.code));
  const coming = new Set(
    known
      .filter(({ released }) => released.standing.is === 'coming')
      .flatMap(({ record }) => record.cards.map(({ code }) => code)),
  );
  const down = new Map<string, Down>();
  for (const { released, record } of known) {
    const { standing } = released;
    if (standing.is !== 'superseded' && standing.is !== 'withdrawn') continue;
    for (const card of record.cards) {
      if (up.has(card.code) || coming.has(card.code)) continue;
      const by = standing.is === 'superseded' ? { by: standing.by } : {};
      down.set(card.code, { card, title: record.title, revision: released.revision, why: standing.is, ...by });
    }
  }
  return [...down.values()];
}
