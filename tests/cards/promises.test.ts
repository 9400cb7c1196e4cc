import { describe, expect, test } from 'vitest';
import type { Card, Figure, Limits } from '../../src/cards/card.ts';
import { contentCode } from '../../src/cards/code.ts';
import { factsOf } from '../../src/cards/facts-of.ts';
import { STATION_OF_SETUP, setupCutAt } from '../../src/facts/setup-stations.ts';
import { parseQuantity } from '../../src/units/parse.ts';
import type { Quantity } from '../../src/units/quantity.ts';
import { compileDemo } from './demo.ts';

const compiled = compileDemo();
const cards = compiled.models.flatMap(({ hands, cards: made }) =>
  made.map(({ card, code }) => ({
    card,
    code,
    facts: hands.find(({ subject }) => subject.hand === card.key.hand)!.facts,
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
    const routes = compiled.models.map(({ id, cards: made }) => [
      id,
      made.filter(({ card }) => card.key.hand === 'right').map(({ card }) => card.key.station),
    ]);
    const before = ['conditioning', 'jointing', 'edge-gluing', 'planing', 'picking', 'rough-sawing', 'sizing'];
    const after = ['trim-sawing', 'machining-back', 'machining-top', 'sign-off'];
    const expected: Record<string, readonly string[]> = {
      tarn: [...before, 'lamination', 'press', ...after, 'set-aside'],
      skerry: [...before, ...after, 'set-aside'],
    };
    for (const [id, route] of routes) if (expected[id as string]) expect(route).toEqual(expected[id as string]);
    expect(routes.map(([id]) => id)).toEqual(expect.arrayContaining(Object.keys(expected)));
  });

  test('a set-up is cut at the station whose card names its program', () => {
    const named = cards.flatMap(({ card }) =>
      [...factsOf(card)].flatMap((fact) => {
        const setup = /^setups\.([^.]+)\.program$/.exec(fact)?.[1];
        return setup === undefined ? [] : [[card.key.station, setup] as const];
      }),
    );
    expect(new Set(named.map(([, setup]) => setup))).toEqual(new Set(Object.keys(STATION_OF_SETUP)));
    for (const [station, setup] of named) expect(setupCutAt(station), setup).toBe(setup);
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
    // A picture's own strings are its id, its type and its fingerprint; none of them is printed.
    const numeral = new Set<unknown>(['figure', 'limits', 'name', 'literal', 'picture']);
    for (const { card } of cards) {
      for (const { text, inside } of walk(dataOf(card))) {
        if (!/\d/.test(text ?? '') || numeral.has(inside?.['kind'])) continue;
        // Ids of facts and the second unit of a quantity belong to the quantity around them.
        expect(Object.keys(inside ?? {}), `${card.key.station}: ${text}`).toEqual(expect.arrayContaining(['unit']));
      }
    }
  });

  test('what is printed is what the fact says: a given number exactly, a computed one to half its last digit', () => {
    let seen = 0;
    for (const { card, facts } of cards) {
      for (const { object } of walk(dataOf(card))) {
        if (object?.['kind'] !== 'figure') continue;
        const figure = object as unknown as Figure;
        const fact = facts.fact(figure.fact)!;
        const q = (fact.state as { value: Quantity }).value;
        const given = fact.origin.kind !== 'derived' || /^as (given|the line)/.test(fact.origin.formula);
        for (const shown of [figure, ...(figure.second ? [figure.second] : [])]) {
          seen += 1;
          // Pounds and whole ounces: the one number printed in two parts.
          const ounces = /^(\d+) lb (\d+) oz$/.exec(shown.text);
          if (ounces) {
            const kg = (Number(ounces[1]) * 16 + Number(ounces[2])) * (0.45359237 / 16);
            expect(Math.abs(kg - q.value)).toBeLessThanOrEqual((0.45359237 / 16) * 0.500001);
            continue;
          }
          // A difference of temperatures is printed in degrees, as people say it.
          const unit = q.kind === 'temperature-difference' ? `Δ${shown.unit}` : shown.unit;
          const read = parseQuantity(`${shown.text} ${unit}`, { kind: q.kind, defaultUnit: unit });
          if (!read.ok) throw new Error(`${shown.text} ${shown.unit}`);
          const off = Math.abs(read.quantity.value - q.value);
          const zero = parseQuantity(`${shown.text.replace(/[1-9]/g, '0').replace(/\d$/, '1')} ${unit}`, {
            kind: q.kind,
            defaultUnit: unit,
          });
          const lastDigit = zero.ok && !shown.text.includes('/') ? Math.abs(zero.quantity.value) : 10_000;
          const where = `${card.key.station}: ${figure.fact} = ${q.value} printed ${shown.text} ${shown.unit}`;
          if (given && shown === figure) expect(off, where).toBe(0);
          else if (/^(blank|stock)\./.test(figure.fact) && q.kind === 'length') {
            // Sizes a piece is cut to are at least: rounded up.
            expect(read.quantity.value, where).toBeGreaterThanOrEqual(q.value);
            expect(off, where).toBeLessThan(lastDigit);
          } else if (/^location\.(?!depth$)|least-pilot$|^rework\..*\.floor$/.test(figure.fact)) {
            // Play and what it does are at most, a pilot and what is still let pass at least: rounded up.
            expect(read.quantity.value, where).toBeGreaterThanOrEqual(q.value);
            expect(off, where).toBeLessThan(lastDigit);
          } else if (/^hold\.[^.]+\.(?:difference|nearest\.side)$/.test(figure.fact)) {
            // What a gauge of vacuum must show at least, and what a cutter pushes at most: rounded up.
            expect(read.quantity.value, where).toBeGreaterThanOrEqual(q.value);
            expect(off, where).toBeLessThan(lastDigit);
          } else if (
            // What a vacuum holds.
            /^(?:hold|zone)\./.test(figure.fact) ||
            figure.fact.endsWith('most-pilot') ||
            figure.fact.endsWith('worst') ||
            figure.fact === 'body.worst-left'
          ) {
            // What is left at worst, and the widest pilot, are rounded down.
            expect(read.quantity.value, where).toBeLessThanOrEqual(q.value);
            expect(off, where).toBeLessThan(lastDigit);
          } else expect(off, where).toBeLessThanOrEqual(lastDigit * 0.500001);
        }
      }
    }
    expect(seen).toBeGreaterThan(300);
  });

  test('limits on a card lie inside the limits of their fact, in both units', () => {
    let seen = 0;
    for (const { card, facts } of cards) {
      for (const { object } of walk(dataOf(card))) {
        if (object?.['kind'] !== 'limits') continue;
        const limits = object as unknown as Limits;
        const q = (facts.fact(limits.fact)!.state as { value: Quantity }).value;
        for (const shown of [limits, ...(limits.second ? [limits.second] : [])]) {
          seen += 1;
          const [low, high] = [shown.low, shown.high].map((text) => {
            const read = parseQuantity(`${text} ${shown.unit}`, { kind: q.kind, defaultUnit: shown.unit });
            if (!read.ok) throw new Error(text);
            return read.quantity.value;
          }) as [number, number];
          const where = `${card.key.station}: ${limits.fact} printed ${shown.low} to ${shown.high} ${shown.unit}`;
          // Lengths are exact; of other kinds a step of a double.
          const hair = q.kind === 'length' ? 0 : Math.abs(q.value) * 1e-12;
          expect(low, where).toBeGreaterThanOrEqual(q.low! - hair);
          expect(high, where).toBeLessThanOrEqual(q.high! + hair);
          expect(low, where).toBeLessThan(high);
        }
      }
    }
    expect(seen).toBeGreaterThan(300);
  });

  test('codes are unique to a content, and take no part in revision, date or where a number came from', () => {
    expect(new Set(cards.map(({ code }) => code)).size).toBe(cards.length);
    const [{ card, code }] = cards as [(typeof cards)[number]];
    expect(contentCode({ ...card, model: { ...card.model, fact: 'elsewhere' } })).toBe(code);
    expect(contentCode({ ...card, model: { ...card.model, text: 'Another' } })).not.toBe(code);
  });
});
