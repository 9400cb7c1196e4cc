/** One hand of a model in both states: its cards pair by pair, what was given otherwise, and what became of bodies under way. */
import type { Drawing, MadeCard, Name } from '../cards/card.ts';
import type { FactState } from '../facts/state.ts';
import { say } from '../cards/station.ts';
import { cardChanges } from './card-changes.ts';
import type { Facts } from './card-changes.ts';
import type { Change, Tag } from './change.ts';
import type { FactChange } from './changed-facts.ts';
import { changedFacts, listOf, rootsIn } from './changed-facts.ts';
import type { GivenChange } from './given.ts';
import { givenChanges } from './given.ts';
import type { ModelState } from './model-state.ts';
import { movedPlaces } from './places.ts';
import type { UnderWay } from './under-way.ts';
import { underWay } from './under-way.ts';

export interface CardNotice {
  readonly model: string;
  readonly title: string;
  readonly hand: 'right' | 'left';
  readonly is: 'changed' | 'new' | 'gone';
  readonly old?: string;
  readonly new?: string;
  readonly changes: readonly Change[];
  /** Both states of each drawing that changed. */
  readonly drawings: readonly { readonly old: Drawing; readonly new: Drawing }[];
}

export interface Untouched {
  readonly model: string;
  readonly title: string;
  readonly hand: 'right' | 'left';
  readonly code: string;
}

/** A card of either side or of both, at its station. */
export interface Placed {
  readonly station: string;
  readonly name: Name;
  readonly untouched?: Untouched;
  readonly notice?: CardNotice;
}

export interface ComparedHand {
  readonly hand: 'right' | 'left';
  readonly places: readonly Change[];
  readonly cards: readonly Placed[];
  readonly given: readonly GivenChange[];
  readonly elsewhere: readonly FactChange[];
  readonly rows: readonly UnderWay[];
}

export function comparedHand(hand: 'right' | 'left', old: ModelState, now: ModelState): ComparedHand {
  const none: ReadonlyMap<string, FactState> = new Map();
  const states = { old: old.facts.get(hand) ?? none, new: now.facts.get(hand) ?? none };
  const changed = changedFacts(states.old, states.new, { old: old.plantHas, new: now.plantHas });
  const roots = rootsIn(changed);
  const places = movedPlaces(changed, states.new);
  const cards = pairsOfCards(hand, old, now).map(([was, is]): Placed => {
    if (!was || !is) return alone((is ?? was)!, now.title, is ? 'new' : 'gone', deciding(changed, roots));
    const { key, station: name } = is.card;
    const of = { model: now.id, title: now.title, hand };
    if (was.code === is.code) return { station: key.station, name, untouched: { ...of, code: is.code } };
    return { station: key.station, name, notice: { ...of, ...changedCard(was, is, { ...states, roots }, places) } };
  });
  const onCards = new Set(cards.flatMap(({ notice }) => notice?.changes.flatMap(({ because }) => because) ?? []));
  const shown = new Set(
    cards.flatMap(({ notice }) => notice?.changes.flatMap(({ moves }) => moves.map(({ fact }) => fact)) ?? []),
  );
  const tagOf = (id: string, all: readonly FactState[]): Tag =>
    onCards.has(listOf(id)) ? 'card' : all.some(({ unread }) => !unread) ? 'check' : 'record';
  const passed = cards.flatMap(({ station, name, notice }) =>
    notice ? [{ station, name, changes: notice.changes }] : [],
  );
  return {
    hand,
    places,
    cards,
    given: givenChanges(changed, states, tagOf),
    elsewhere: [...changed.values()].filter(
      (change) => (change.new ?? change.old)!.from === 'derived' && !shown.has(change.id),
    ),
    rows: underWay(passed, states),
  };
}

/** What differs on it, and in which drawings. */
function changedCard(was: MadeCard, is: MadeCard, facts: Facts, places: readonly Change[]) {
  const reads = new Set([...was.reads, ...is.reads]);
  const all = new Set([...reads].flatMap((fact) => facts.roots(fact)));
  const changes = explained(cardChanges(was.card, is.card, facts), [...all]);
  const because = new Set(changes.flatMap((change) => change.because));
  const drawings = is.card.drawings.flatMap((drawing) => {
    const before = was.card.drawings.find(({ id }) => id === drawing.id);
    const changed = changes.some(({ at }) => at === `drawings/${drawing.id}`);
    return before && changed ? [{ old: before, new: drawing }] : [];
  });
  return {
    is: 'changed',
    old: was.code,
    new: is.code,
    changes: [...places.filter((place) => place.because.some((one) => because.has(one))), ...changes],
    drawings,
  } as const;
}

/** What shows no fact that moved is there because of something the whole card looks at. */
function explained(changes: readonly Change[], all: readonly string[]): readonly Change[] {
  const told = new Set(changes.flatMap(({ because }) => because));
  const rest = all.filter((root) => !told.has(root));
  const otherwise = rest.length > 0 ? rest : all;
  return changes.map((change) => (change.because.length > 0 ? change : { ...change, because: otherwise }));
}

/** The cards of a hand by station: the new in their order, then what is gone. */
function pairsOfCards(
  hand: string,
  old: ModelState,
  now: ModelState,
): readonly (readonly [MadeCard | undefined, MadeCard | undefined])[] {
  const of = ({ cards }: ModelState) => cards.filter(({ card }) => card.key.hand === hand);
  const at = (cards: readonly MadeCard[], { card }: MadeCard) =>
    cards.find((other) => other.card.key.station === card.key.station);
  const [before, after] = [of(old), of(now)];
  return [
    ...after.map((made) => [at(before, made), made] as const),
    ...before.filter((made) => !at(after, made)).map((made) => [made, undefined] as const),
  ];
}

/** Why a station has a card of it, or none: the route, what the body is made of, its set-ups; else whatever was given otherwise. */
function deciding(
  changed: ReadonlyMap<string, FactChange>,
  roots: (id: string) => readonly string[],
): readonly string[] {
  const of = (which: (id: string) => boolean) => [...new Set([...changed.keys()].filter(which).flatMap(roots))];
  const decide = of((id) => /^(?:plant\.route|timber|setups)\b/.test(id));
  return decide.length > 0 ? decide : of(() => true);
}

/** `because`: of a model that has others of its cards on either side. */
export function alone(
  { card, code }: MadeCard,
  title: string,
  is: 'new' | 'gone',
  because?: readonly string[],
): Placed {
  const { model, hand, station } = card.key;
  const line = say(`change.card.${is}`, { what: card.station });
  const notice: CardNotice = {
    model,
    title,
    hand,
    is,
    ...(is === 'new' ? { new: code } : { old: code }),
    changes: because ? [{ is: 'card', how: is, tag: 'card', line, also: [], moves: [], because }] : [],
    drawings: [],
  };
  return { station, name: card.station, notice };
}
