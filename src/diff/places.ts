/** Cavities, holes and channels that lie elsewhere: how far, and which way. */
import type { Line, Name } from '../cards/card.ts';
import { figureOfState } from '../cards/figures.ts';
import { say } from '../cards/station.ts';
import type { FactNumber, FactState } from '../facts/state.ts';
import type { Change } from './change.ts';
import type { FactChange } from './changed-facts.ts';

const PLACE = /^((?:cavities|holes|channels|fittings|contours)\.[^.]+)\.(?:(at|start|end)\.)(x|y)$/;

type States = ReadonlyMap<string, FactState>;

/** One for each place of which x, y or both moved. As a spec has it: seen from the top, y toward the neck, x toward the treble side. */
export function movedPlaces(changed: ReadonlyMap<string, FactChange>, after: States): readonly Change[] {
  const places = new Map<string, { of: string; end: string; x?: FactChange; y?: FactChange }>();
  for (const [id, change] of changed) {
    const match = PLACE.exec(id);
    if (!match || !change.old?.number || !change.new?.number) continue;
    const [, of, end, axis] = match;
    const key = `${of} ${end}`;
    places.set(key, { ...(places.get(key) ?? { of: of!, end: end! }), [axis as 'x' | 'y']: change });
  }
  return [...places.values()].map(({ of, end, x, y }): Change => {
    const [dx, dy] = [by(x), by(y)];
    const number = (x ?? y)!.new!.number!;
    const id = (x ?? y)!.id;
    const line = say(`change.place.${end}`, {
      what: titled(of, after),
      by: figureOfState(id, rounded(number), Math.round(Math.hypot(dx, dy) / 10_000) * 10_000),
      ways: { kind: 'series', items: ways(id, number, { dx, dy }) },
    });
    return {
      is: 'place',
      how: 'changed',
      tag: 'card',
      line,
      also: [],
      moves: [],
      because: [x, y].flatMap((one) => one?.id ?? []),
    };
  });
}

const by = (change: FactChange | undefined): number =>
  change ? change.new!.number!.value - change.old!.number!.value : 0;

/** To 0.01 mm: the way of two moves is a root. */
const rounded = (number: FactNumber): FactNumber => ({ ...number, decimals: 2 });

function ways(id: string, number: FactNumber, { dx, dy }: { dx: number; dy: number }): readonly Line[] {
  const way = (which: string, size: number): readonly Line[] =>
    size === 0 ? [] : [say(`change.way.${which}`, { by: figureOfState(id, number, Math.abs(size)) })];
  return [...way(dy > 0 ? 'neck' : 'tail', dy), ...way(dx > 0 ? 'treble' : 'bass', dx)];
}

/** By its title; by its id where it has none. */
function titled(of: string, after: States): Name {
  const title = after.get(`${of}.title`);
  return title
    ? { kind: 'name', text: title.text, fact: title.id }
    : { kind: 'name', text: of.slice(of.indexOf('.') + 1).replaceAll('-', ' '), fact: of };
}
