/**
 * What changed between two states of models and plant, and whom it touches: by station, then by model. On facts and on what
 * cards say, never on text: another order, another unit or another base is no difference.
 */
import type { Name } from '../cards/card.ts';
import type { FactState } from '../facts/state.ts';
import type { Change, Tag } from './change.ts';
import type { FactChange } from './changed-facts.ts';
import { changedFacts } from './changed-facts.ts';
import type { GivenChange } from './given.ts';
import { givenChanges } from './given.ts';
import { handsOf } from './model-state.ts';
import type { ModelState } from './model-state.ts';
import type { UnderWay } from './under-way.ts';
import { alone, comparedHand } from './hand.ts';
import type { CardNotice, Placed, Untouched } from './hand.ts';

/** One side: what it is called, its models, and the rows of its plant where it is more than what a release keeps of it. */
export interface Side {
  readonly name: string;
  readonly models: readonly ModelState[];
  /** Ids of stations, where it is known; else in the order of the cards. */
  readonly route?: readonly string[];
  readonly plant?: ReadonlyMap<string, FactState>;
}

export interface StationNotice {
  readonly id: string;
  readonly name: Name;
  readonly cards: readonly CardNotice[];
  /** Cards that hang on as they are. */
  readonly untouched: readonly Untouched[];
}

export interface ModelNotice {
  readonly id: string;
  readonly title: string;
  readonly is: 'changed' | 'record' | 'same' | 'new' | 'gone';
  readonly old?: string;
  readonly new?: string;
  readonly given: readonly GivenChange[];
  readonly places: readonly Change[];
  /** Derived numbers that moved and are on no card that changed: the checks have them, or nobody. */
  readonly elsewhere: readonly FactChange[];
  readonly underWay: readonly { readonly hand: 'right' | 'left'; readonly rows: readonly UnderWay[] }[];
}

export interface Notice {
  readonly old: string;
  readonly new: string;
  /** Given with the plant: said once, whichever models it touches. */
  readonly plant: readonly GivenChange[];
  readonly models: readonly ModelNotice[];
  /** In the order of the route; those with a card that changed, came or went. */
  readonly stations: readonly StationNotice[];
  readonly untouched: readonly StationNotice[];
}

export function noticeOf(before: Side, after: Side): Notice {
  const pairs = pairsOf(before.models, after.models);
  const made = pairs.map(({ old, new: now }) => compared(old, now));
  const stations = byStation(
    made.flatMap(({ cards }) => cards),
    after.route ?? before.route ?? [],
  );
  return {
    old: before.name,
    new: after.name,
    plant: ofPlant(before, after, made),
    models: made.map(({ model }) => model),
    stations: stations.filter(({ cards }) => cards.length > 0),
    untouched: stations.filter(({ cards }) => cards.length === 0),
  };
}

/** Whether anything differs at all. */
export const isEmpty = ({ plant, models }: Notice): boolean =>
  plant.length === 0 && models.every(({ is }) => is === 'same');

interface ModelPair {
  readonly old?: ModelState;
  readonly new?: ModelState;
}

/** By their ids; of one model on each side, the two. */
function pairsOf(before: readonly ModelState[], after: readonly ModelState[]): readonly ModelPair[] {
  if (before.length === 1 && after.length === 1) return [{ old: before[0]!, new: after[0]! }];
  const ids = [...new Set([...after, ...before].map(({ id }) => id))].toSorted();
  const of = (models: readonly ModelState[], id: string) => models.find((model) => model.id === id);
  return ids.map((id) => {
    const [old, now] = [of(before, id), of(after, id)];
    return { ...(old ? { old } : {}), ...(now ? { new: now } : {}) };
  });
}

interface Compared {
  readonly model: ModelNotice;
  readonly cards: readonly Placed[];
  /** Given with the plant, by what either hand has of it. */
  readonly plant: readonly GivenChange[];
}

function compared(old: ModelState | undefined, now: ModelState | undefined): Compared {
  const { id, title } = (now ?? old)!;
  const revisions = { ...(old ? { old: old.revision } : {}), ...(now ? { new: now.revision } : {}) };
  if (!old || !now) {
    const is = now ? 'new' : 'gone';
    const cards = (now ?? old)!.cards.map((made) => alone(made, title, is));
    return {
      model: { id, title, is, ...revisions, given: [], places: [], elsewhere: [], underWay: [] },
      cards,
      plant: [],
    };
  }
  const each = handsOf(now, old).map((hand) => comparedHand(hand, old, now));
  const given = uniqueGiven(each.flatMap((one) => one.given));
  const cards = each.flatMap((one) => one.cards);
  const touched = cards.some(({ notice }) => notice !== undefined);
  return {
    model: {
      id,
      title,
      is: touched ? 'changed' : given.length > 0 || old.revision !== now.revision ? 'record' : 'same',
      ...revisions,
      given: given.filter((one) => !isPlant(one.id)),
      places: firstOf(
        each.flatMap((one) => one.places),
        ({ because }) => because.join(' '),
      ),
      elsewhere: firstOf(
        each.flatMap((one) => one.elsewhere),
        ({ id: fact }) => fact,
      ),
      underWay: each.flatMap(({ hand, rows }) => (rows.length > 0 ? [{ hand, rows }] : [])),
    },
    cards,
    plant: given.filter((one) => isPlant(one.id)),
  };
}

/** What both hands have alike, once. */
const firstOf = <T>(all: readonly T[], key: (one: T) => string): readonly T[] =>
  [...new Map(all.toReversed().map((one) => [key(one), one] as const)).values()].toReversed();

const isPlant = (id: string): boolean => /^(?:plant|published)\./.test(id);

function byStation(placed: readonly Placed[], route: readonly string[]): readonly StationNotice[] {
  const met = [...new Set(placed.map(({ station }) => station))];
  // A route that names a station twice passes it twice: it is told once.
  const ids = [...new Set([...route.filter((id) => met.includes(id)), ...met])];
  return ids.map((id) => {
    const here = placed.filter(({ station }) => station === id);
    return {
      id,
      name: here[0]!.name,
      cards: here.flatMap(({ notice }) => notice ?? []),
      untouched: here.flatMap(({ untouched }) => untouched ?? []),
    };
  });
}

/** What both hands were given alike is said once; on a card of either is on a card. */
function uniqueGiven(all: readonly GivenChange[]): readonly GivenChange[] {
  const byId = new Map<string, GivenChange>();
  for (const one of all) {
    const key = `${one.id}\n${one.old}\n${one.new}`;
    const met = byId.get(key);
    if (!met || RANK.indexOf(one.tag) < RANK.indexOf(met.tag)) byId.set(key, one);
  }
  return [...byId.values()];
}

const RANK: readonly Tag[] = ['card', 'check', 'record'];

/** What models read of the plant, and of two whole plants the rest, of which nothing but the record has a use. */
function ofPlant(before: Side, after: Side, made: readonly Compared[]): readonly GivenChange[] {
  const read = uniqueGiven(made.flatMap(({ plant }) => plant));
  if (!before.plant || !after.plant) return read;
  const states = { old: before.plant, new: after.plant };
  const known = new Set(read.map(({ id }) => id));
  const rest = givenChanges(changedFacts(states.old, states.new), states, () => 'record');
  return [...read, ...rest.filter(({ id }) => !known.has(id))];
}
