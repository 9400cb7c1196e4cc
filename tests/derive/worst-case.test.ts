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
import type { Subject } from '../../src/facts/subject.ts';
import type { Length, Quantity } from '../../src/units/quantity.ts';
import { compileDemo } from '../cards/demo.ts';
import { seeded } from '../faults/seeded.ts';
import type { Seeded } from '../faults/seeded.ts';

const { checked } = compileDemo();
const subjects = new Map(checked.models.map(({ id, hands }) => [id, hands[0]!.subject]));

/** Bodies of each model: a thousand in all. */
const BODIES = 125;
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

/** A body as it may come out: sizes of the spec within their limits; sideways no further than the machine's row says. */
function bodyOf({ spec, plant, hand }: Subject, facts: Facts, chance: Seeded): Subject {
  const sizes = leavesOf({ stages: spec.stages, cavities: spec.cavities, holes: spec.holes, channels: spec.channels });
  const off = [spec.cavities, spec.holes].flatMap((table) => Object.values(table ?? {}).map((cut) => cut.at));
  const moved = new Map<string, number>();
  for (const { x, y } of off) {
    const [angle, away] = [chance.next() * 2 * Math.PI, 0.15e6 * (chance.whole(2) || chance.next())];
    moved.set(x.id, Math.round(away * Math.cos(angle))).set(y.id, Math.round(away * Math.sin(angle)));
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
  return { spec: replaced(spec, by), plant, hand };
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
