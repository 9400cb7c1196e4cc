/** A card as a list of things that can be told apart: by what each is about, whatever its numbers are. */
import type { Arg, Card, Check, Drawing, Line, Picture, Tool } from '../cards/card.ts';
import type { KeyNumber } from '../cards/card.ts';
import { canonical } from '../cards/code.ts';

/** One thing of a card, with where it stands: `steps/3`, `tables/1/4`. */
export type Item = {
  readonly at: string;
  readonly key: string;
  /** A wider one, for what has no counterpart of its own key. */
  readonly loose: string;
  readonly content: string;
} & Thing;

export type Thing =
  | { readonly is: 'head'; readonly of: string; readonly value: Arg }
  | { readonly is: 'key-number'; readonly number: KeyNumber }
  | { readonly is: 'step' | 'when-out' | 'caution' | 'sign-off' | 'permit'; readonly line: Line }
  | { readonly is: 'note'; readonly line: Arg }
  | { readonly is: 'tool'; readonly tool: Tool }
  | { readonly is: 'check'; readonly check: Check }
  | {
      readonly is: 'row';
      readonly title: Line;
      readonly columns: readonly Line[];
      readonly cells: readonly Arg[];
      readonly alone: boolean;
    }
  | { readonly is: 'drawing'; readonly drawing: Drawing }
  | { readonly is: 'picture'; readonly picture: Picture };

export function itemsOf(card: Card): readonly Item[] {
  const things: (readonly [string, string, Thing])[] = [
    ...headOf(card),
    ...card.keyNumbers.map(
      (number, i) => ['keyNumbers', i, about(number.label), { is: 'key-number', number }] as const,
    ),
    ...lines('steps', 'step', card.steps),
    ...card.tools.map((tool, i) => ['tools', i, about(tool.role), { is: 'tool', tool }] as const),
    ...card.checks.map((check, i) => ['checks', i, about(check.what), { is: 'check', check }] as const),
    ...lines('whenOut', 'when-out', card.whenOut),
    ...lines(
      'cautions',
      'caution',
      card.cautions.map(({ line }) => line),
    ),
    ...card.tables.flatMap(({ title, columns, rows }, t) =>
      rows.map((cells, i) => {
        const key = `${about(title)} ${cells[0] ? about(cells[0]) : ''}`;
        return [`tables/${t}`, i, key, { is: 'row', title, columns, cells, alone: rows.length === 1 }] as const;
      }),
    ),
    ...card.drawings.map((drawing) => ['drawings', drawing.id, drawing.id, { is: 'drawing', drawing }] as const),
    ...(card.pictures ?? []).map((picture, i) => ['pictures', i, '', { is: 'picture', picture }] as const),
    ...card.notes.map((line, i) => ['notes', i, line.fact, { is: 'note', line }] as const),
    ...lines('permits', 'permit', card.permits),
    ...lines('signOff', 'sign-off', card.signOff),
  ].map(([section, index, key, thing]) => [`${section}/${index}`, `${thing.is} ${key}`, thing] as const);
  return things.map(([at, key, thing]) => ({
    at,
    key,
    loose: looseOf(thing),
    content: canonical({ ...thing, alone: undefined }),
    ...thing,
  }));
}

function looseOf(thing: Thing): string {
  if ('line' in thing && thing.line.kind === 'line') return `${thing.is} ${thing.line.say}`;
  if (thing.is === 'check') return `check ${thing.check.what.say}`;
  if (thing.is === 'tool') return `tool ${thing.tool.role.say}`;
  return '';
}

type Placed = readonly [string, string | number, string, Thing];

function headOf(card: Card): readonly Placed[] {
  const { handLine, accepts } = card;
  const value: readonly (readonly [string, Arg | undefined])[] = [
    ['model', card.model],
    ['station', card.station],
    ['hand', handLine],
    ['finishes', { kind: 'series', items: card.finishNames }],
    ['decides', card.decides],
    ['accepts', accepts],
  ];
  return value.flatMap(([of, arg]) => (arg ? [['head', of, of, { is: 'head', of, value: arg }] as const] : []));
}

const lines = (
  section: string,
  is: 'step' | 'when-out' | 'caution' | 'sign-off' | 'permit',
  all: readonly Line[],
): readonly Placed[] => all.map((line, i) => [section, i, about(line), { is, line }] as const);

/** What an argument is about, its numbers left out: two lines of the same are one line with other numbers. */
export function about(arg: Arg): string {
  if (arg.kind === 'name') return arg.text;
  if (arg.kind === 'series') return arg.items.map(about).join(' ');
  if (arg.kind !== 'line') return '';
  const parts = Object.keys(arg.with)
    .toSorted()
    .map((name) => about(arg.with[name]!));
  return [arg.say, ...parts].filter((part) => part !== '').join(' ');
}

export interface Pair {
  readonly old?: Item;
  readonly new?: Item;
}

/** What is not the same in both: a thing with its counterpart, or alone. In the order of the new card, then what is gone. */
export function unlike(before: readonly Item[], after: readonly Item[]): readonly Pair[] {
  const first = paired(without(before, after), without(after, before), ({ key }) => key);
  // What is left of a kind, if it is one on either side, is the same thing with another name in it.
  const alone = first.filter((pair) => !pair.old || !pair.new);
  const olds = alone.flatMap(({ old }) => old ?? []);
  const news = alone.flatMap(({ new: now }) => now ?? []);
  const one = (items: readonly Item[], { loose }: Item) =>
    loose !== '' && items.filter((item) => item.loose === loose).length === 1;
  const loosely = (item: Item) => one(olds, item) && one(news, item);
  const second = paired(olds.filter(loosely), news.filter(loosely), ({ loose }) => loose);
  const rest = (items: readonly Item[]) => items.filter((item) => !loosely(item));
  const pairs = [
    ...first.filter((pair) => pair.old && pair.new),
    ...second,
    ...rest(news).map((item): Pair => ({ new: item })),
  ];
  const place = ({ new: now }: Pair) => after.indexOf(now!);
  return [...pairs.toSorted((a, b) => place(a) - place(b)), ...rest(olds).map((item): Pair => ({ old: item }))];
}

function paired(olds: readonly Item[], news: readonly Item[], keyOf: (item: Item) => string): readonly Pair[] {
  const before = new Map(numbered(olds, keyOf).map((each) => [each.id, each.item]));
  const after = numbered(news, keyOf);
  const met = new Set(after.map(({ id }) => id));
  return [
    ...after.map(({ id, item }): Pair => {
      const old = before.get(id);
      return old ? { old, new: item } : { new: item };
    }),
    ...[...before].flatMap(([id, old]): Pair[] => (met.has(id) ? [] : [{ old }])),
  ];
}

/** The first list less what the second has as well, each counted as often as it is there. */
function without(items: readonly Item[], others: readonly Item[]): readonly Item[] {
  const count = new Map<string, number>();
  const same = ({ key, content }: Item) => `${key}\n${content}`;
  for (const other of others) count.set(same(other), (count.get(same(other)) ?? 0) + 1);
  return items.filter((item) => {
    const left = count.get(same(item)) ?? 0;
    count.set(same(item), left - 1);
    return left <= 0;
  });
}

/** Several of one key are told apart by which of them it is. */
function numbered(
  items: readonly Item[],
  keyOf: (item: Item) => string,
): readonly { readonly id: string; readonly item: Item }[] {
  const count = new Map<string, number>();
  return items.map((item) => {
    const key = keyOf(item);
    const nth = count.get(key) ?? 0;
    count.set(key, nth + 1);
    return { id: `${key} ${nth}`, item };
  });
}
