/**
 * Bodies drawn from the tolerances: every given size anywhere within its limits, every cut a little off sideways. None is
 * thinner anywhere than the worst case that is printed. What a body has left is worked out anew from the drawn sizes, as the
 * nominal of a spec that gives just them; the worst case comes from the limits alone.
 */
import { describe, expect, test } from 'vitest';
import { derive } from '../../src/derive/derive.ts';
import type { Facts } from '../../src/facts/facts.ts';
import { Leaf } from '../../src/facts/leaf.ts';
import { leavesOf } from '../../src/facts/leaves.ts';
import type { Model } from '../../src/facts/spec.generated.ts';
import type { Subject } from '../../src/facts/subject.ts';
import type { Length, Quantity } from '../../src/units/quantity.ts';
import { compileDemo } from '../cards/demo.ts';
import { seeded } from '../faults/seeded.ts';
import type { Seeded } from '../faults/seeded.ts';

const { checked } = compileDemo();
const subjects = new Map(checked.models.map(({ id, hands }) => [id, hands[0]!.subject]));

/** Bodies of each model; a thousand in all where BODIES_ALL is set (npm run test:bodies). */
const BODIES = process.env['BODIES_ALL'] ? 125 : 25;
/** Sizes are held to the nanometre, places to a thousandth: what rounding and the search for the least may differ by. */
const SEARCH_NM = 3000;

const isLength = (value: unknown): value is Length =>
  typeof value === 'object' && value !== null && (value as Quantity).kind === 'length';

/** A tree with some of its leaves put in another's place. */
function replaced<T>(tree: T, by: ReadonlyMap<string, Leaf<unknown>>): T {
  if (tree instanceof Leaf) return (by.get(tree.id) ?? tree) as T;
  if (Array.isArray(tree)) return tree.map((one) => replaced(one, by)) as T;
  if (typeof tree !== 'object' || tree === null) return tree;
  return Object.fromEntries(Object.entries(tree).map(([key, one]) => [key, replaced(one, by)])) as T;
}

/** At an end of its limits more often than not: the worst is there. */
function drawn(q: Length, chance: Seeded): Length {
  const [low, high] = [q.low ?? q.value, q.high ?? q.value];
  const at = chance.whole(3);
  const value = at === 0 ? low : at === 1 ? high : low + chance.next() * (high - low);
  const { low: _low, high: _high, causes: _causes, ...rest } = q;
  return { ...rest, value: Math.round(value) };
}

/**
 * How the body lies on the top fixture, as a move of every place: its first hole anywhere within the play of the first pin, its
 * second against either side of the second; the holes themselves off by what the router did to them.
 */
function layingOf(facts: Facts, offBy: ReadonlyMap<string, Move>, chance: Seeded) {
  const read = <I extends `location.top.${'datums' | 'first-play' | 'second-play'}`>(id: I) => {
    const reading = facts.read((use) => use.fact(id));
    if (!reading.ok || reading.value === undefined) throw new Error(id);
    return reading.value;
  };
  const [a, b] = read('location.top.datums');
  const half = (play: Length) => (play.high ?? play.value) / 2;
  const [holeA, holeB] = [offBy.get(a.id)!, offBy.get(b.id)!];
  const play = anyWay(half(read('location.top.first-play')), chance);
  const spacing = Math.hypot(b.xMm - a.xMm, b.yMm - a.yMm);
  const across = { x: -(b.yMm - a.yMm) / spacing, y: (b.xMm - a.xMm) / spacing };
  const side = half(read('location.top.second-play')) * (chance.whole(2) ? 1 : -1);
  // What the router then cuts lies off the other way than the body does.
  const first = { x: holeA.x + play.x, y: holeA.y + play.y };
  const turn = (holeB.x * across.x + holeB.y * across.y + side - first.x * across.x - first.y * across.y) / spacing;
  const move = (xMm: number, yMm: number): Move => ({
    x: first.x - turn * (yMm - a.yMm),
    y: first.y + turn * (xMm - a.xMm),
  });
  return { move, turnDeg: (turn / 1e6) * (180 / Math.PI) };
}

interface Move {
  readonly x: number;
  readonly y: number;
}

/** So far at most, any way; as far as it goes more often than not. */
function anyWay(most: number, chance: Seeded): Move {
  const [angle, away] = [chance.next() * 2 * Math.PI, most * (chance.whole(2) || chance.next())];
  return { x: away * Math.cos(angle), y: away * Math.sin(angle) };
}

/**
 * A body as it may come out: sizes of the spec within their limits; sideways each cut no further than the machine's row says,
 * and all cuts of the top together as the body lies on its pins.
 */
function bodyOf({ spec, plant, hand, pictures }: Subject, facts: Facts, chance: Seeded): Subject {
  const sizes = leavesOf({ stages: spec.stages, cavities: spec.cavities, holes: spec.holes, channels: spec.channels });
  const cuts = [spec.cavities, spec.holes].flatMap((table) => Object.entries(table ?? {}));
  const offBy = new Map(cuts.map(([id]) => [id, anyWay(0.15e6, chance)]));
  const laid = layingOf(facts, offBy, chance);
  const moved = new Map<string, number>();
  const move = ({ x, y }: Model.Point, setup: Leaf<string>, own: Move) => {
    const top =
      facts.peek(setup) === 'top' ? laid.move(facts.peek(x).value / 1e6, facts.peek(y).value / 1e6) : { x: 0, y: 0 };
    moved.set(x.id, Math.round(own.x + top.x)).set(y.id, Math.round(own.y + top.y));
  };
  for (const [id, { at, setup }] of cuts) move(at, setup, offBy.get(id)!);
  for (const { start, end, setup } of Object.values(spec.channels ?? {})) {
    for (const point of [start, end]) move(point, setup, { x: 0, y: 0 });
  }
  const by = new Map(
    sizes.flatMap((leaf): [string, Leaf<unknown>][] => {
      const value = facts.peek(leaf);
      if (!isLength(value)) return [];
      const as = drawn(value, chance);
      return [
        [leaf.id, new Leaf(leaf.id, leaf.text, leaf.writing, { ...as, value: as.value + (moved.get(leaf.id) ?? 0) })],
      ];
    }),
  );
  return { spec: turnedWith(replaced(spec, by), laid.turnDeg, facts), plant, hand, readings: new Map(), pictures };
}

/** A pocket of the top turns with the body as it lies, and does not only move. */
function turnedWith(spec: Model.ModelSpec, turnDeg: number, facts: Facts): Model.ModelSpec {
  const cavities = Object.entries(spec.cavities ?? {}).map(([id, cavity]) => {
    if (facts.peek(cavity.setup) !== 'top') return [id, cavity] as const;
    const value = (cavity.angle ? facts.peek(cavity.angle).value : 0) + turnDeg;
    const { writing } = cavity.at.x;
    const angle = new Leaf(`cavities.${id}.angle`, '', writing, {
      kind: 'angle' as const,
      value,
      unit: 'deg',
      decimals: 9,
    });
    return [id, { ...cavity, angle }] as const;
  });
  return { ...spec, cavities: Object.fromEntries(cavities) };
}

/** Wood left between all there is, by the id of its fact: nominal and worst. */
function woods(facts: Facts, ids: readonly `left.${string}`[]) {
  return new Map(
    ids.flatMap((id) => {
      const reading = facts.read((use) => use.fact(id));
      return reading.ok && reading.value ? [[id, reading.value] as const] : [];
    }),
  );
}

describe('a body drawn from the tolerances is nowhere thinner than the worst case', () => {
  test.each([...subjects.keys()])('%s', (id) => {
    const subject = subjects.get(id)!;
    const facts = derive(subject);
    const ids = facts.all().flatMap((fact) => (fact.id.startsWith('left.') ? [fact.id as `left.${string}`] : []));
    const printed = new Map([...woods(facts, ids)].filter(([, { left }]) => left.mm > 0 && left.mm < 25));
    expect(printed.size).toBeGreaterThan(5);
    const chance = seeded(20_261_125);
    let [least, thinner] = [Infinity, 0];
    for (let body = 0; body < BODIES; body++) {
      const actual = woods(derive(bodyOf(subject, facts, chance)), [...printed.keys()]);
      for (const [which, { wood }] of actual) {
        const over = wood.value - (printed.get(which)!.wood.low ?? printed.get(which)!.wood.value);
        least = Math.min(least, over);
        if (over < -SEARCH_NM) thinner += 1;
      }
    }
    expect(thinner).toBe(0);
    // And the worst case is not far beyond what may come out: somewhere a body came near it.
    expect(least).toBeLessThan(0.25e6);
  });
});
