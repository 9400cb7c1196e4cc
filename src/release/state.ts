/** What the ledger says on a day: of each release whether bodies are made by it, and what is held or deviates. Pure. */
import type { DeviationAct, Entry, HoldAct, ReleaseAct, Start, WithdrawAct } from './entries.ts';

export type Standing =
  | { readonly is: 'coming'; readonly from: Start }
  /** `to`: the next release, known already, takes over from there. */
  | { readonly is: 'current'; readonly from: Start; readonly to?: Start }
  /** Bodies begun on it are finished on it, up to and with that day. */
  | { readonly is: 'run-out'; readonly until: string; readonly to: Start; readonly by: string }
  | { readonly is: 'superseded'; readonly by: string; readonly from: Start }
  | { readonly is: 'withdrawn'; readonly act: WithdrawAct };

/** Its record is that of its latest version. */
export interface Released extends ReleaseAct {
  readonly standing: Standing;
}

export interface State {
  /** Oldest first. */
  readonly releases: readonly Released[];
  readonly holds: readonly HoldAct[];
  /** In force on that day, and not past it. */
  readonly deviations: readonly DeviationAct[];
}

/** As of the end of that day, YYYY-MM-DD. Days of that form compare as texts. */
export function stateOn(entries: readonly Entry[], on: string): State {
  const known = entries.filter((entry) => entry.on <= on);
  const releases = known.filter((entry): entry is ReleaseAct => entry.act === 'release');
  return {
    releases: releases.map((release) => ({
      ...release,
      record: versionOf(release, known),
      standing: standingOf(release, known, on),
    })),
    holds: holdsIn(known),
    deviations: deviationsIn(known).filter(({ until }) => until >= on),
  };
}

function versionOf({ model, revision, record }: ReleaseAct, known: readonly Entry[]): ReleaseAct['record'] {
  const versions = known.filter(
    (entry) => entry.act === 'version' && entry.model === model && entry.revision === revision,
  );
  const last = versions.at(-1);
  return last?.act === 'version' ? last.record : record;
}

function standingOf(release: ReleaseAct, known: readonly Entry[], on: string): Standing {
  const at = known.indexOf(release);
  const withdrawn = known.find(
    (entry): entry is WithdrawAct =>
      entry.act === 'withdraw' && entry.model === release.model && entry.revision === release.revision,
  );
  if (withdrawn) return { is: 'withdrawn', act: withdrawn };
  const { from } = release;
  if (!hasBegun(from, on)) return { is: 'coming', from };
  // A release that was withdrawn still ended the one before it: nobody goes back without a new release.
  const next = known
    .slice(at + 1)
    .find((entry): entry is ReleaseAct => entry.act === 'release' && entry.model === release.model);
  if (!next) return { is: 'current', from };
  if (!hasBegun(next.from, on)) return { is: 'current', from, to: next.from };
  const { underWay, oldUntil } = next;
  if (underWay === 'finish-on-old' && oldUntil !== undefined && oldUntil >= on)
    return { is: 'run-out', until: oldUntil, to: next.from, by: next.revision };
  return { is: 'superseded', by: next.revision, from: next.from };
}

/** A release from an order on hangs at once: the orders say which card is whose. */
const hasBegun = (from: Start, on: string): boolean => !('date' in from) || from.date <= on;

/** Of two for the same limits the later one: it stands for the earlier too. */
function deviationsIn(known: readonly Entry[]): readonly DeviationAct[] {
  const all = known.filter((entry): entry is DeviationAct => entry.act === 'deviation');
  return all.filter((one, i) => !all.slice(i + 1).some(({ model, fact }) => model === one.model && fact === one.fact));
}

/** Holds not lifted since. A lift without a lot lifts every lot. */
function holdsIn(known: readonly Entry[]): readonly HoldAct[] {
  return known.filter((entry, i): entry is HoldAct => {
    if (entry.act !== 'hold') return false;
    return !known
      .slice(i + 1)
      .some(
        (later) =>
          later.act === 'lift' &&
          later.table === entry.table &&
          later.held === entry.held &&
          (later.lot === undefined || later.lot === entry.lot),
      );
  });
}

/** Whether bodies are made by it on that day. */
export const hangs = ({ standing }: Released): boolean => standing.is === 'current' || standing.is === 'run-out';
