import { describe, expect, test } from 'vitest';
import { runChecks } from '../../src/check/run.ts';
import type { Derivation, Facts, Use } from '../../src/facts/facts.ts';
import { byDefinition, makeFacts } from '../../src/facts/facts.ts';
import { Leaf, hole, holeId } from '../../src/facts/leaf.ts';
import { namesOf, present, row, wanted } from '../../src/facts/row.ts';
import { sampleSubject } from '../derive/subject.ts';

const leaf = <T>(id: string, value: T, start = 0): Leaf<T> =>
  new Leaf(id, String(value), { kind: 'given', place: { file: 'f', start, end: start + 1 } }, value);

/** A derivation of an id of the test's own. */
const rule = (id: string, value: (use: Use & { fact: (id: string) => number }) => unknown): Derivation =>
  ({ id, label: `the ${id}`, formula: 'f', source: byDefinition, value }) as unknown as Derivation;

const stateOf = (facts: Facts, id: string) => facts.fact(id)!.state;

describe('what a fact was computed from', () => {
  const [a, b, unused] = [leaf('a', 2), leaf('b', 3), leaf('unused', 9)];
  const facts = makeFacts([
    rule('sum', (use) => use(a) + use(b) + use(a)),
    rule('twice', (use) => 2 * use.fact('sum')),
    rule('either', (use) => (use(a) > 0 ? use(b) : use(unused))),
  ]);

  test('is every leaf opened and every fact asked for, once, in that order, and nothing else', () => {
    expect(facts.fact('sum')).toMatchObject({ inputs: ['a', 'b'], state: { ok: true, value: 7 } });
    expect(facts.fact('twice')).toMatchObject({ inputs: ['sum'], state: { ok: true, value: 14 } });
    expect(facts.fact('either')!.inputs).toEqual(['a', 'b']);
    expect(facts.fact('unused')).toBeUndefined();
  });

  test('leads to leaves with the place they were written at', () => {
    expect(facts.fact('a')).toEqual({
      id: 'a',
      label: 'a',
      origin: { kind: 'given', place: { file: 'f', start: 0, end: 1 } },
      inputs: [],
      state: { ok: true, value: 2 },
    });
  });

  test('a reader keeps the same record', () => {
    expect(facts.read((use) => use(b))).toEqual({ ok: true, value: 3, inputs: ['b'] });
  });
});

test('a fact is computed when first asked for, and once', () => {
  const ran: string[] = [];
  const facts = makeFacts([
    rule('a', () => (ran.push('a'), 1)),
    rule('b', (use) => (ran.push('b'), use.fact('a') + use.fact('a'))),
  ]);
  expect(ran).toEqual([]);
  expect(stateOf(facts, 'b')).toEqual({ ok: true, value: 2 });
  facts.fact('b');
  facts.all();
  expect(ran).toEqual(['b', 'a']);
});

test('two derivations of one id are a bug', () => {
  expect(() => makeFacts([rule('a', () => 1), rule('a', () => 2)])).toThrow('two derivations of a');
});

describe('what is missing', () => {
  const gap: Leaf<number> = hole('stages.cap');
  const facts = makeFacts([
    rule('from-gap', (use) => use(gap)),
    rule('above', (use) => use.fact('from-gap') + 1),
    rule('from-nothing', (use) => use.fact('nowhere')),
    rule('from-undefined', (use) => use(undefined as unknown as Leaf<number>)),
    rule('is-a-gap', () => gap),
    rule('fine', () => 1),
  ]);

  test('makes unavailable whatever needs it, by its own id', () => {
    for (const id of ['from-gap', 'above', 'is-a-gap'])
      expect(stateOf(facts, id)).toEqual({ ok: false, missing: ['stages.cap'] });
    expect(stateOf(facts, 'from-nothing')).toEqual({ ok: false, missing: ['nowhere'] });
    expect(stateOf(facts, 'from-undefined').ok).toBe(false);
    expect(stateOf(facts, 'fine').ok).toBe(true);
  });

  test('is an input too', () => {
    expect(facts.fact('from-gap')!.inputs).toEqual(['stages.cap']);
    expect(facts.fact('above')!.inputs).toEqual(['from-gap']);
  });

  test('any other throw is ours and passes through', () => {
    const broken = makeFacts([
      rule('broken', () => {
        throw new TypeError('ours');
      }),
    ]);
    expect(() => broken.fact('broken')).toThrow('ours');
  });
});

describe('numbers that wait for each other', () => {
  const ring = () =>
    makeFacts([
      rule('a', (use) => use.fact('b')),
      rule('b', (use) => use.fact('c')),
      rule('c', (use) => use.fact('a')),
      rule('above', (use) => use.fact('a')),
    ]);

  test('are unavailable, and know their ring', () => {
    expect(stateOf(ring(), 'above')).toEqual({ ok: false, missing: ['a'], ring: ['a', 'b', 'c'] });
  });

  test('are one finding, from wherever they are met', () => {
    const found = runChecks(
      { subject: sampleSubject(), facts: ring(), others: [], on: '2026-11-25', flow: [], seen: [] },
      ['derived'],
      [],
    ).filter(({ id }) => id === 'ring-of-numbers');
    expect(found.map(({ what }) => what)).toEqual(['These numbers wait for each other: the a → the b → the c.']);
  });

  test('do not stay behind: the next fact is computed as ever', () => {
    const facts = makeFacts([rule('a', (use) => use.fact('a')), rule('b', () => 1)]);
    facts.fact('a');
    expect(stateOf(facts, 'b').ok).toBe(true);
    expect(stateOf(facts, 'a')).toMatchObject({ ring: ['a'] });
  });
});

describe('a hole', () => {
  interface Any extends Iterable<unknown> {
    (...args: unknown[]): Any;
    readonly [name: string]: Any;
  }
  const gap: Any = hole('x');

  test('stays a hole of the same name, whatever is asked or called of it', () => {
    for (const thing of [
      gap['a'],
      gap['a']!['b'],
      gap['map']!(() => 1),
      gap['constructor'],
      gap['then'],
      gap['__proto__'],
    ])
      expect(holeId(thing)).toBe('x');
    expect(Object.keys(gap)).toEqual([]);
    expect(Object.hasOwn(gap, 'a')).toBe(false);
    expect(JSON.stringify({ gap })).toBe('{}');
    expect(gap instanceof Leaf).toBe(false);
  });

  test('gone through as a list or taken for a number it stops the reader, and is what is missing', () => {
    const facts = makeFacts([]);
    const missing = { ok: false, missing: ['x'], inputs: [] };
    expect(facts.read(() => [...gap])).toEqual(missing);
    expect(facts.read(() => Number(gap) + 1)).toEqual(missing);
    expect(facts.read(() => `${gap as unknown as string} mm`)).toEqual(missing);
  });

  test('stands for a row or a thing that is not there', () => {
    const table = { router: { kind: 'router' } };
    expect(row(table, 'router', 'plant.machines')).toBe(table.router);
    expect(holeId(row(table, 'toString', 'plant.machines'))).toBe('plant.machines.toString');
    expect(holeId(row<object>(undefined, 'router', 'plant.machines'))).toBe('plant.machines.router');
    expect(holeId(wanted(undefined, 'y'))).toBe('y');
    expect(present(gap)).toBeUndefined();
    expect(namesOf(gap)).toEqual([]);
    expect([holeId(undefined), holeId(null), holeId({}), holeId(() => 1)]).toEqual([
      undefined,
      undefined,
      undefined,
      undefined,
    ]);
  });
});
