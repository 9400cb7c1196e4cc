/** Picks, hours, things to have ready and second use of a small floor, worked out by hand: the arithmetic stands beside each. */
import { describe, expect, test } from 'vitest';
import type { FactNumber } from '../../src/facts/state.ts';
import type { Admitted } from '../../src/run/admit.ts';
import { hoursOf } from '../../src/run/hours.ts';
import { jobsOf } from '../../src/run/jobs.ts';
import type { MadeBy } from '../../src/run/made-by.ts';
import { boardFeetText, boardFootTenths, picksFor } from '../../src/run/picks.ts';
import { secondUses } from '../../src/run/second-use.ts';

const BOARD_FOOT = 0.002359737216;
const mm = (value: number): FactNumber => ({ kind: 'length', value: Math.round(value * 1e6), unit: 'mm', decimals: 1 });
const count = (value: number): FactNumber => ({ kind: 'count', value, unit: '', decimals: 0 });
const minutes = (value: number): FactNumber => ({ kind: 'time', value: value * 60, unit: 'min', decimals: 1 });
const feet = (value: number): FactNumber => ({
  kind: 'timber-volume',
  value: value * BOARD_FOOT,
  unit: 'bf',
  decimals: 2,
});

interface Part {
  readonly part: 'cap' | 'back' | 'slab';
  readonly species: string;
  readonly pieces: number;
  readonly boards: number;
  readonly width: number;
  readonly sized: number;
  readonly feet: number;
}

/** A release of a model with these parts, on blanks 460.2 mm long. */
function release(model: string, parts: readonly Part[], blankWidth: number, top: number): MadeBy {
  const numbers = new Map<string, FactNumber>([
    ['blank.length', mm(460.2)],
    ['blank.width', mm(blankWidth)],
    ['run.top.body.all', minutes(top)],
  ]);
  const texts = new Map<string, string>([['plant.grades.figure.steps', 'plain, select, fine']]);
  for (const one of parts) {
    numbers
      .set(`blank.${one.part}.pieces`, count(one.pieces))
      .set(`stock.${one.part}.boards`, count(one.boards))
      .set(`blank.${one.part}.piece-width`, mm(one.width))
      .set(`thickness.part.${one.part}.sized`, mm(one.sized))
      .set(`blank.${one.part}.bought`, feet(one.feet));
    texts
      .set(`timber.${one.part}.species`, one.species)
      .set(`timber.${one.part}.stock`, `${one.species}-8-4`)
      .set(`plant.species.${one.species}.title`, one.species)
      .set(`plant.stock.${one.species}-8-4.title`, `${one.species} 8/4`)
      .set(`plant.stock.${one.species}-8-4.rough`, '2 in')
      .set(`blank.${one.part}.pieces`, String(one.pieces));
  }
  const card = (station: string, limit: string) => ({
    key: { model, hand: 'right', station, finishes: [] },
    names: [],
    reads: [],
    limits: [{ fact: 'x', what: 'Thickness', text: limit }],
  });
  return {
    model,
    title: model,
    revision: 'A',
    hand: 'right',
    parts: parts.map(({ part }) => part),
    finishes: ['clear'],
    grades: { clear: { figure: ['select', 'fine'] } },
    cards: [card('planing', parts[0]!.sized.toFixed(2)), card('machining-top', model)],
    text: (id: string) => texts.get(id),
    number: (id: string) => numbers.get(id),
    scale: () => ['plain', 'select', 'fine'],
  } as unknown as MadeBy;
}

const order = (number: string, by: MadeBy, quantity: number, grade: readonly string[] = []): Admitted => ({
  order: { number, model: by.model, finish: 'clear', grade, hand: 'right', quantity, places: {} as never },
  by,
  lots: [],
});

const alder = (part: Part['part'], sized: number): Part => ({
  part,
  species: 'alder',
  pieces: 2,
  boards: 2,
  width: 197.2,
  sized,
  feet: 4.7754,
});
const maple: Part = { part: 'cap', species: 'maple', pieces: 2, boards: 1, width: 197.2, sized: 16.4, feet: 3.1836 };

const heavy = release('heavy', [maple, alder('back', 34.4)], 389.2, 30);
const light = release('light', [alder('slab', 34.4)], 389.2, 12);
const thin = release('thin', [maple, alder('back', 30.0)], 380.0, 30);

describe('picks', () => {
  // Three of heavy and two of it: 5 bodies, 10 halves, 5 boards sawn into leaves. 5 × 3.1836 = 15.918, upward to 16.0.
  // Backs: 5 × 2 = 10 pieces of 10 boards, 5 × 4.7754 = 23.877 → 23.9. Slabs of light are of the same stock, but another part:
  // 4 × 2 = 8 pieces, 4 × 4.7754 = 19.1016 → 19.2.
  test('are counted by wood, part, grade and size', () => {
    const picks = picksFor([order('1', heavy, 3), order('2', light, 4), order('3', heavy, 2)]);
    expect(
      picks.map(({ part, pieces, boards, bodies, boardFeet, orders }) => [
        part,
        bodies,
        pieces,
        boards,
        boardFeet,
        orders,
      ]),
    ).toEqual([
      ['back', 5, 10, 10, '23.9', ['1', '3']],
      ['slab', 4, 8, 8, '19.2', ['2']],
      ['cap', 5, 10, 5, '16.0', ['1', '3']],
    ]);
    // 197.2 and 460.2, to whole millimetres upward.
    expect(picks[0]).toMatchObject({ width: '198 mm', length: '461 mm', thickness: '2 in' });
    expect(picks[0]!.grade).toEqual([{ scale: 'figure', steps: ['select', 'fine'] }]);
  });

  test('of another grade are another line', () => {
    const picks = picksFor([order('1', heavy, 3), order('2', heavy, 2, ['fine'])]);
    expect(picks.filter(({ part }) => part === 'cap').map(({ pieces, grade }) => [pieces, grade[0]!.steps])).toEqual([
      [4, ['fine']],
      [6, ['select', 'fine']],
    ]);
  });

  test.each([
    [0.1, '0.1'],
    [3.0000001, '3.1'],
    [3, '3.0'],
    // Ten times 0.3 is 3, whatever the doubles say.
    [Array.from({ length: 10 }, () => 0.3).reduce((sum, one) => sum + one, 0), '3.0'],
  ])('%d board feet are %s', (value, text) => {
    expect(boardFeetText(boardFootTenths(value * BOARD_FOOT))).toBe(text);
  });
});

describe('hours', () => {
  const floor = {
    stations: [
      { id: 'planing', name: 'Planing', perBody: 3, changeover: 6 },
      { id: 'press', name: 'Press', perBody: undefined, changeover: undefined },
      { id: 'machining-top', name: 'Top', perBody: undefined, changeover: 25 },
    ],
    shift: 450,
  };
  const list = [order('1', heavy, 3), order('2', light, 4), order('3', heavy, 2)];

  // Planing: 9 bodies × 3 = 27, set up for heavy, light and heavy 3 × 6 = 18: 45 of 450. Top: 5 × 30 + 4 × 12 = 198, 3 × 25 = 75:
  // 273.
  test('are work and changeovers of each station that is passed', () => {
    expect(hoursOf(jobsOf(list, floor, '2026-11-27'), floor)).toEqual({
      stations: [
        { station: 'planing', name: 'Planing', work: 27, changeovers: 3, changing: 18, share: 45 / 450 },
        { station: 'machining-top', name: 'Top', work: 198, changeovers: 3, changing: 75, share: 273 / 450 },
      ],
      machines: [],
      bottleneck: 'machining-top',
    });
  });

  // On one router both come on top of each other: 225 + 93 = 318 of 450, more than either alone.
  test('of stations that share a machine are summed, and may be the bottleneck together', () => {
    const router = { id: 'router', name: 'Router' };
    const shared = {
      ...floor,
      stations: floor.stations.map((one) => (one.id === 'press' ? one : { ...one, machine: router })),
    };
    const { stations, machines, bottleneck } = hoursOf(jobsOf(list, shared, '2026-11-27'), shared);
    expect(stations.map(({ share }) => share)).toEqual([45 / 450, 273 / 450]);
    expect(machines).toEqual([
      {
        machine: 'router',
        name: 'Router',
        stations: ['Planing', 'Top'],
        work: 225,
        changeovers: 6,
        changing: 93,
        share: 318 / 450,
      },
    ]);
    expect(bottleneck).toBe('router');
  });

  // Heavy and thin stand on the same cap: planing is not set up anew between them, the router is.
  test('count no set-up between two that are set up alike', () => {
    const jobs = jobsOf([order('1', heavy, 1), order('2', thin, 1)], floor, '2026-11-27');
    expect(hoursOf(jobs, floor).stations.map(({ changeovers }) => changeovers)).toEqual([1, 2]);
  });
});

describe('second use', () => {
  // A back of heavy, 34.4, is thick and wide enough for thin, 30.0 on a narrower blank; not the other way. Light is of the same
  // wood and as thick as heavy: nothing is left to take off, but thin can be made of it. Caps are alike: none serves the other.
  test('is what is thicker, no smaller and of the same wood', () => {
    const uses = secondUses([order('1', heavy, 1), order('2', light, 1), order('3', thin, 2), order('4', thin, 1)]);
    expect(
      uses.map(({ of, part, serves }) => [
        of.model,
        part,
        serves.map(({ by, part: as, orders }) => [by.model, as, orders]),
      ]),
    ).toEqual([
      ['heavy', 'back', [['thin', 'back', ['3', '4']]]],
      ['light', 'slab', [['thin', 'back', ['3', '4']]]],
    ]);
    expect(secondUses([order('1', heavy, 1), order('2', light, 1)])).toEqual([]);
  });
});
