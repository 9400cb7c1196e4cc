/** What somebody gave otherwise, line against line; a list of names is one line, whatever its items. */
import type { Line, Name } from '../cards/card.ts';
import { say } from '../cards/station.ts';
import type { FactState } from '../facts/state.ts';
import type { Change, Tag } from './change.ts';
import { listOf } from './changed-facts.ts';
import type { FactChange } from './changed-facts.ts';
import { moveLines } from './card-changes.ts';
import { moveOf } from './move.ts';

type States = ReadonlyMap<string, FactState>;

export interface GivenChange extends Change {
  /** Id of the line, or of the list it is an item of. */
  readonly id: string;
  readonly old?: string;
  readonly new?: string;
}

/** `tagOf`: whether a card, a check or nothing but the record has a use for it. */
export function givenChanges(
  changed: ReadonlyMap<string, FactChange>,
  { old, new: now }: { readonly old: States; readonly new: States },
  tagOf: (id: string, states: readonly FactState[]) => Tag,
): readonly GivenChange[] {
  const groups = new Map<string, FactChange[]>();
  for (const change of changed.values()) {
    if ((change.new ?? change.old)!.from === 'derived') continue;
    const list = listOf(change.id);
    groups.set(list, [...(groups.get(list) ?? []), change]);
  }
  return [...groups].map(([id, changes]): GivenChange => {
    const [was, is] = [textOf(id, old), textOf(id, now)];
    const states = changes.flatMap((change) => [change.old, change.new].flatMap((state) => state ?? []));
    const how = was === undefined ? 'new' : is === undefined ? 'gone' : 'changed';
    return {
      is: 'given',
      how,
      id,
      tag: tags(changes.map((change) => tagOf(change.id, states))),
      line: givenLine(id, how, was, is),
      ...movesOf(changes, now),
      because: [id],
      ...(was === undefined ? {} : { old: was }),
      ...(is === undefined ? {} : { new: is }),
    };
  });
}

/** As the whole list stands, or the one line. */
function textOf(id: string, states: States): string | undefined {
  const one = states.get(id);
  if (one) return one.text;
  const items = [...states.values()].filter((state) => state.id.startsWith(`${id}[`) && listOf(state.id) === id);
  return items.length === 0 ? undefined : items.map(({ text }) => text).join(', ');
}

function givenLine(id: string, how: Change['how'], was: string | undefined, is: string | undefined): Line {
  const name = (text: string): Name => ({ kind: 'name', text, fact: id });
  return say(`change.given.${how}`, {
    what: name(id),
    ...(is === undefined ? {} : { new: name(shortened(is)) }),
    ...(was === undefined ? {} : { old: name(shortened(was)) }),
  });
}

const LONGEST = 80;

/** An outline is hundreds of numbers: what it became is in the drawing. */
export const shortened = (text: string): string => (text.length > LONGEST ? `${text.slice(0, LONGEST)}…` : text);

function movesOf(changes: readonly FactChange[], now: States): Pick<Change, 'also' | 'moves'> {
  const [{ id, old, new: is }] = changes as [FactChange];
  const move = old?.number && is?.number && moveOf(old.number, is.number);
  if (!move) return { also: [], moves: [] };
  return { also: moveLines({ fact: id, ...move }, { new: now }), moves: [{ fact: id, ...move }] };
}

/** A list is on a card where one of its items is. */
const tags = (all: readonly Tag[]): Tag => (['card', 'check'] as const).find((tag) => all.includes(tag)) ?? 'record';
