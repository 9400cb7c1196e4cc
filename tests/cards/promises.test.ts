import { describe, expect, test } from 'vitest';
import type { Card } from '../../src/cards/card.ts';
import { contentCode } from '../../src/cards/code.ts';
import { compileDemo } from './demo.ts';

const compiled = compileDemo();
const cards = compiled.models.flatMap(({ model, cards: made }) =>
  made.map(({ card, code }) => ({
    card,
    code,
    facts: model.hands.find(({ subject }) => subject.hand === card.key.hand)!.facts,
  })),
);

type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json };

/** Every object and string of a card with the object it sits in. */
function* walk(
  value: Json,
  inside?: { readonly [key: string]: Json },
): Generator<{ text?: string; object?: { readonly [key: string]: Json }; inside?: { readonly [key: string]: Json } }> {
  if (typeof value === 'string') yield { text: value, ...(inside ? { inside } : {}) };
  else if (Array.isArray(value)) for (const item of value) yield* walk(item as Json, inside);
  else if (typeof value === 'object' && value !== null) {
    const object = value as { readonly [key: string]: Json };
    yield { object };
    for (const field of Object.values(object)) yield* walk(field, object);
  }
}

const dataOf = ({ key: _key, ...card }: Card): Json => card as unknown as Json;

describe('the demo catalogue', () => {
  test('has no findings, and a card for every station of every route', () => {
    expect(compiled.checked.findings).toEqual([]);
    for (const { findings } of compiled.models) expect(findings).toEqual([]);
    const routes = compiled.models.map(({ model, cards: made }) => [
      model.id,
      made.filter(({ card }) => card.key.hand === 'right').map(({ card }) => card.key.station),
    ]);
    const before = ['conditioning', 'jointing', 'edge-gluing', 'planing', 'picking', 'rough-sawing', 'sizing'];
    const after = ['trim-sawing', 'machining-back', 'machining-top', 'sign-off'];
    const expected: Record<string, readonly string[]> = {
      tarn: [...before, 'lamination', 'press', ...after],
      skerry: [...before, ...after],
    };
    for (const [id, route] of routes) if (expected[id as string]) expect(route).toEqual(expected[id as string]);
    expect(routes.map(([id]) => id)).toEqual(expect.arrayContaining(Object.keys(expected)));
  });

  test('every number and name on a card leads to a fact that was really computed', () => {
    let seen = 0;
    for (const { card, facts } of cards) {
      for (const { object } of walk(dataOf(card))) {
        if (typeof object?.['fact'] !== 'string') continue;
        seen += 1;
        expect(facts.fact(object['fact'])?.state.ok, `${card.key.station}: ${object['fact']}`).toBe(true);
      }
    }
    expect(seen).toBeGreaterThan(500);
  });

  test('numerals stand only in quantities, names and listed literals', () => {
    const numeral = new Set<unknown>(['figure', 'limits', 'name', 'literal']);
    for (const { card } of cards) {
      for (const { text, inside } of walk(dataOf(card))) {
        if (!/\d/.test(text ?? '') || numeral.has(inside?.['kind'])) continue;
        // Ids of facts and the second unit of a quantity belong to the quantity around them.
        expect(Object.keys(inside ?? {}), `${card.key.station}: ${text}`).toEqual(expect.arrayContaining(['unit']));
      }
    }
  });

  test('codes are unique to a content, and take no part in revision, date or where a number came from', () => {
    expect(new Set(cards.map(({ code }) => code)).size).toBe(cards.length);
    const [{ card, code }] = cards as [(typeof cards)[number]];
    expect(contentCode({ ...card, model: { ...card.model, fact: 'elsewhere' } })).toBe(code);
    expect(contentCode({ ...card, model: { ...card.model, text: 'Another' } })).not.toBe(code);
  });
});
