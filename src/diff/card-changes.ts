/** What is different on a card, thing by thing. Where its code changed, something is said: that holds by construction. */
import type { Arg, Card, Figure, Limits, Line } from '../cards/card.ts';
import { canonical } from '../cards/code.ts';
import { factsOf } from '../cards/facts-of.ts';
import { figureOfState } from '../cards/figures.ts';
import { say } from '../cards/station.ts';
import type { FactState } from '../facts/state.ts';
import type { Change, FactMove } from './change.ts';
import type { Item, Pair } from './items.ts';
import { about, itemsOf, unlike } from './items.ts';
import { moveOf, moveUnit } from './move.ts';

/** The facts of both sides, and what a changed one goes back to. */
export interface Facts {
  readonly old: ReadonlyMap<string, FactState>;
  readonly new: ReadonlyMap<string, FactState>;
  readonly roots: (fact: string) => readonly string[];
}

export function cardChanges(before: Card, after: Card, facts: Facts): readonly Change[] {
  const changes = unlike(itemsOf(before), itemsOf(after)).flatMap((pair) => changesOf(pair, facts));
  if (changes.length > 0 || canonical(before) === canonical(after)) return changes;
  // The same things in another order, or under other heads.
  return [{ is: 'order', how: 'changed', tag: 'card', line: say('change.order'), also: [], moves: [], because: [] }];
}

function changesOf(pair: Pair, facts: Facts): readonly Change[] {
  const { old, new: now } = pair;
  const item = (now ?? old)!;
  const how = old && now ? 'changed' : now ? 'new' : 'gone';
  const lines = old && now ? changedLines(old, now) : [aloneLine(item, now ? 'new' : 'gone')];
  const because = (ids: readonly string[]) => [...new Set(ids.flatMap((fact) => facts.roots(fact)))];
  const all = because([...factsOf(old), ...factsOf(now)]);
  return lines.map(({ line, numbers }) => {
    // Of a row or a check, the number that moved: not what else stands beside it.
    const own = because(numbers.flatMap((pair) => pair.flatMap((arg) => ('fact' in arg ? [arg.fact] : []))));
    const moves = numbers.flatMap((each) => movesOf(each, facts));
    return {
      is: item.is,
      how,
      tag: 'card',
      line,
      also: moves.flatMap((move) => moveLines(move, facts)),
      moves,
      because: own.length > 0 ? own : all,
      ...(now ? { at: now.at } : {}),
    };
  });
}

interface Told {
  readonly line: Line;
  readonly numbers: readonly (readonly [Arg, Arg])[];
}

/** Both states of a thing: number against number, cell against cell; of a sentence, the whole of it. */
function changedLines(old: Item, now: Item): readonly Told[] {
  if (old.is === 'key-number' && now.is === 'key-number')
    return [valueLine(now.number.label, old.number.value, now.number.value)];
  if (old.is === 'tool' && now.is === 'tool') return [valueLine(now.tool.role, old.tool.name, now.tool.name)];
  if (old.is === 'check' && now.is === 'check') return checkLines(old, now);
  if (old.is === 'row' && now.is === 'row') return rowLines(old, now);
  if (old.is === 'head' && now.is === 'head') return [valueLine(say(`change.head.${now.of}`), old.value, now.value)];
  if (now.is === 'drawing')
    return [{ line: say('change.drawing.changed', { what: now.drawing.caption }), numbers: [] }];
  if (now.is === 'picture')
    return [{ line: say('change.picture.changed', { what: now.picture.caption }), numbers: [] }];
  if ('line' in old && 'line' in now) {
    const line = say(`change.${now.is}.changed`, { new: now.line, old: old.line });
    return [{ line, numbers: numbersIn(old.line, now.line) }];
  }
  return [aloneLine(now, 'new')];
}

const valueLine = (what: Line, old: Arg, now: Arg): Told => ({
  line: say('change.value', { what, new: now, old }),
  numbers: numbersIn(old, now),
});

function checkLines({ check: old }: Item & { is: 'check' }, { check: now }: Item & { is: 'check' }): readonly Told[] {
  const same = (a: unknown, b: unknown) => canonical(a) === canonical(b);
  const part = (id: string, from: Arg | undefined, to: Arg | undefined): readonly Told[] =>
    same(from, to)
      ? []
      : [
          {
            line: say(`change.check-part.${id}`, {
              what: now.what,
              new: to ?? say('change.none'),
              old: from ?? say('change.none'),
            }),
            numbers: from && to ? numbersIn(from, to) : [],
          },
        ];
  return [
    ...(same(old.what, now.what)
      ? []
      : [
          {
            line: say('change.check.changed', { new: now.what, old: old.what }),
            numbers: numbersIn(old.what, now.what),
          },
        ]),
    ...part('limits', old.limits, now.limits),
    ...part('gauge', old.gauge, now.gauge),
    ...part('often', old.often, now.often),
    ...(same(old.boxes, now.boxes) ? [] : [{ line: say('change.check-part.boxes', { what: now.what }), numbers: [] }]),
  ];
}

function rowLines(old: Item & { is: 'row' }, now: Item & { is: 'row' }): readonly Told[] {
  const head = (column: number) => now.columns[column] ?? say('change.none');
  const row = rowName(now);
  const told = now.cells.flatMap((cell, i): Told[] => {
    const was = old.cells[i];
    if (!was || canonical(was) === canonical(cell)) return [];
    return [{ line: say('change.cell', { row, column: head(i), new: cell, old: was }), numbers: numbersIn(was, cell) }];
  });
  return told.length > 0 ? told : [{ line: say('change.row.changed', { what: now.title, row }), numbers: [] }];
}

/** Its first cells, as far as they are words; of a row of numbers, that of its table. */
function rowName({ title, columns, cells, alone }: Item & { is: 'row' }): Arg {
  const words = cells.slice(0, 2).filter((cell) => /\p{L}{3}/u.test(about(cell)));
  if (words.length > 0) return { kind: 'series', items: words };
  if (alone || !cells[0]) return title;
  return { kind: 'series', items: [title, say('change.row-at', { column: columns[0] ?? title, at: cells[0] })] };
}

function aloneLine(item: Item, how: 'new' | 'gone'): Told {
  const line = (what: Arg, more: Readonly<Record<string, Arg>> = {}) =>
    say(`change.${item.is}.${how}`, { what, ...more });
  const numbers: Told['numbers'] = [];
  if (item.is === 'key-number') return { line: line(item.number.label, { value: item.number.value }), numbers };
  if (item.is === 'row') return { line: line(item.title, { row: rowName(item) }), numbers };
  return { line: line(nameOf(item)), numbers };
}

function nameOf(item: Exclude<Item, { is: 'key-number' | 'row' }>): Arg {
  if (item.is === 'tool') return item.tool.name;
  if (item.is === 'check') return item.check.what;
  if (item.is === 'drawing') return item.drawing.caption;
  if (item.is === 'picture') return item.picture.caption;
  return item.is === 'head' ? item.value : item.line;
}

/** Numbers that stand in the same place of both. */
function numbersIn(old: Arg, now: Arg): readonly (readonly [Figure | Limits, Figure | Limits])[] {
  if ((old.kind === 'figure' || old.kind === 'limits') && (now.kind === 'figure' || now.kind === 'limits'))
    return canonical(old) === canonical(now) ? [] : [[old, now]];
  if (old.kind === 'series' && now.kind === 'series' && old.items.length === now.items.length)
    return now.items.flatMap((item, i) => numbersIn(old.items[i]!, item));
  if (old.kind === 'line' && now.kind === 'line' && old.say === now.say)
    return Object.keys(now.with).flatMap((name) => (old.with[name] ? numbersIn(old.with[name], now.with[name]!) : []));
  return [];
}

function movesOf([old, now]: readonly [Arg, Arg], facts: Facts): readonly FactMove[] {
  if (!('fact' in old) || !('fact' in now)) return [];
  const [from, to] = [facts.old.get(old.fact)?.number, facts.new.get(now.fact)?.number];
  const move = from && to && moveOf(from, to);
  if (!move) return [];
  const { limits, ...size } = move;
  // What is printed as one number has no limits for whoever reads it.
  const was = old.fact === now.fact ? {} : { was: old.fact };
  return [{ fact: now.fact, ...was, ...size, ...(limits && now.kind === 'limits' ? { limits } : {}) }];
}

/** `0.4 mm (.016 in) less, 167 % of its tolerance`, and what became of the limits. */
export function moveLines(
  { fact, kind, by, limitBy, ofTolerance, limits }: FactMove,
  facts: Pick<Facts, 'new'>,
): readonly Line[] {
  const number = facts.new.get(fact)!.number!;
  const size = figureOfState(fact, { ...number, kind, unit: moveUnit(kind, number) }, Math.abs(limitBy ?? by));
  const way = limitBy !== undefined ? 'limit' : by > 0 ? 'more' : 'less';
  const share =
    ofTolerance === undefined
      ? say(`change.${way}`, { by: size })
      : say(`change.${way}-of`, { by: size, share: percent(fact, ofTolerance) });
  return [...(by === 0 && limitBy === undefined ? [] : [share]), ...(limits ? [say(`change.limits.${limits}`)] : [])];
}

function percent(fact: string, share: number): Figure {
  const number = { kind: 'fraction', value: share, unit: '%', decimals: 0 } as const;
  // To one per cent; a smaller one to a tenth of it, and never to nought.
  const [steps, least] = share < 0.01 ? [1000, 1] : [100, 0];
  return figureOfState(fact, number, Math.max(least, Math.round(share * steps)) / steps);
}
