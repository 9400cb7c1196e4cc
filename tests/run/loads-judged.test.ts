/** Lists made up by chance, judged by the rules alone; and the judge itself, by loads that were spoilt on purpose. */
import { describe, expect, test } from 'vitest';
import type { Load, Press, PressJob } from '../../src/run/loads.ts';
import { loadsOf } from '../../src/run/loads.ts';
import { seeded } from '../faults/seeded.ts';
import type { Answer } from './judge-loads.ts';
import { exhaustive, judge, readBadly, weigh } from './judge-loads.ts';
import { chanceJobs, JOB, PRESS } from './plant.ts';

/** RUN_ALL=1: four times as many. */
const SEEDS = Array.from({ length: process.env['RUN_ALL'] === undefined ? 100 : 400 }, (none, seed) => seed);

/** Other presses too: low ones, weak ones, ones of three stacks. */
function chanceCase(seed: number, orders: number, mostBodies: number): { jobs: PressJob[]; press: Press } {
  const chance = seeded(seed);
  const jobs = chanceJobs(chance, orders, mostBodies);
  const press = {
    ...PRESS,
    daylight: chance.pick([0.15, 0.17, 0.25, 0.4]),
    closedHeight: chance.pick([0.05, 0.12, 0.12]),
    capacity: chance.pick([100e3, 150e3, 220e3, 400e3]),
    gaugeMost: chance.pick([8e6, 14e6, 14e6, 25e6]),
    gaugeFull: chance.pick([12e6, 18e6, 25e6]),
    sideBySide: chance.pick([1, 2, 3, 3]),
    plate: chance.pick([PRESS.plate, { length: 1.3, width: 0.55 }]),
  };
  return { jobs, press };
}

test('long lists by chance: every load is right, and nothing is left over', () => {
  const seen = { mixed: 0, beside: 0, threeBeside: 0, filled: 0, cut: 0, badly: 0 };
  const refused = new Set<string>();
  for (const seed of SEEDS) {
    const { jobs, press } = chanceCase(seed, 8, 15);
    const answer = loadsOf(jobs, press);
    expect({ seed, faults: judge(jobs, press, answer) }).toEqual({ seed, faults: [] });
    for (const { why } of answer.refused) refused.add(why);
    for (const load of answer.loads) {
      seen.mixed += Number(new Set(load.stacks[0]!.map(({ model }) => model)).size > 1);
      seen.beside += Number(load.stacks.length > 1);
      seen.threeBeside += Number(load.stacks.length > 2);
      seen.filled += Number(load.filling > 0);
      seen.cut += Number(load.force.high === press.capacity);
      seen.badly += Number(readBadly(load));
    }
  }
  // Lists that met none of this would show nothing.
  expect(Object.entries(seen).filter(([, times]) => times < SEEDS.length / 20)).toEqual([]);
  expect([...refused].toSorted()).toEqual(['too-high', 'too-large', 'too-slow', 'too-strong']);
});

test('short lists by chance: of all ways to cut and stack them it is the best', () => {
  for (const seed of SEEDS) {
    const { jobs, press } = chanceCase(1000 + seed, 5, 3);
    const few = jobs.filter((_job, at) => total(jobs.slice(0, at + 1)) <= 9);
    const { loads } = loadsOf(few, press);
    const sizes = loads.map(({ stacks }) => stacks.flat().length);
    const found = { sizes, badly: loads.filter(readBadly).length };
    expect({ seed, ...found }).toEqual({ seed, ...exhaustive(few, press) });
  }
});

test('stacks of one pattern, mixed in turn at random, are found again', () => {
  for (const seed of SEEDS) {
    const chance = seeded(seed);
    const beside = chance.pick([2, 3]);
    const layers = 12 / beside;
    const pattern = Array.from({ length: layers }, () => chance.pick(['A', 'B', 'B']));
    const heights = Array<number>(beside).fill(0);
    const jobs = chance
      .shuffle(Array.from({ length: 12 }, (_none, at) => at % beside))
      .map((stack) => pattern[heights[stack]!++]!)
      .map((model, at) => ({ ...JOB, order: `O-${at}`, model, openTime: 6000, closedTime: 6000 }));
    // As high as the stacks and no higher: they fit beside each other or not at all.
    const daylight = layers * 0.0511 + (layers + 1) * 0.02;
    const strong = { capacity: 1e9, gaugeMost: 1e9, gaugeFull: 1e9, plate: { length: 9, width: 9 } };
    const press = { ...PRESS, ...strong, daylight, sideBySide: beside };
    const answer = loadsOf(jobs, press);
    expect({ seed, loads: answer.loads.length }).toEqual({ seed, loads: 1 });
    expect(judge(jobs, press, answer)).toEqual([]);
  }
});

const total = (jobs: readonly PressJob[]): number => jobs.reduce((sum, { bodies }) => sum + bodies, 0);

describe('the judge finds', () => {
  const glued = { ...JOB, openTime: 1200, closedTime: 1150 };
  const jobs: PressJob[] = [
    { ...glued, order: 'O-1', bodies: 10 },
    { ...glued, order: 'O-2', bodies: 3, model: 'Wren', jointArea: 0.12, pressTime: 3600 },
    { ...glued, order: 'O-3', bodies: 2, adhesive: 'urea glue', hand: 'left' },
    { ...glued, order: 'O-4', bodies: 2, width: 0.95 },
    { ...glued, order: 'O-5', bodies: 1, adhesive: 'urea glue', jointArea: 0.1, model: 'Teal' },
  ];
  const right = loadsOf(jobs, PRESS);
  const spoil = (at: number, change: (load: Load) => Partial<Load>): Answer => ({
    ...right,
    loads: right.loads.map((load, i) => (i === at ? { ...load, ...change(load) } : load)),
  });
  const band = (name: 'height' | 'force' | 'gauge' | 'scale', end: 'low' | 'high', factor: number): Answer =>
    spoil(0, (load) => ({ [name]: { ...load[name], [end]: load[name][end] * factor } }));
  const named = (order: string) =>
    right.loads.flatMap(({ stacks }) => stacks.flat()).find((one) => one.order === order)!;
  const [first, second, third, fourth] = right.loads;

  test('nothing in what is right', () => {
    expect(right.loads.map(({ stacks }) => stacks.map(({ length }) => length))).toEqual([[5, 5], [3], [2], [1]]);
    expect(judge(jobs, PRESS, right)).toEqual([]);
  });

  const spoilt: Record<string, () => Answer> = {
    'one more body': () => spoil(1, ({ stacks: [stack] }) => ({ stacks: [[...stack!, named('O-2')]] })),
    'one body less': () => spoil(1, ({ stacks: [stack] }) => ({ stacks: [stack!.slice(1)] })),
    'a load twice': () => ({ ...right, loads: [first!, ...right.loads] }),
    'a load left out': () => ({ ...right, loads: right.loads.slice(0, -1) }),
    'loads out of turn': () => ({ ...right, loads: [second!, first!, third!, fourth!] }),
    'the other hand': () =>
      spoil(2, ({ stacks }) => ({ stacks: [stacks[0]!.map((one) => ({ ...one, hand: 'right' }))] })),
    'another model': () =>
      spoil(2, ({ stacks }) => ({ stacks: [stacks[0]!.map((one) => ({ ...one, model: 'Teal' }))] })),
    'another adhesive': () => spoil(0, () => ({ adhesive: 'urea glue' })),
    'two adhesives': () => merged(second!, third!),
    'bodies that refuse each other': () => merged(third!, fourth!),
    'stacks not alike': () => spoil(0, ({ stacks: [a, b] }) => ({ stacks: [a!.slice(1), [...b!, a![0]!]] })),
    'a stack too high': () => spoil(0, ({ stacks }) => ({ stacks: [stacks.flat()] })),
    'a board too few': () => spoil(3, ({ filling }) => ({ filling: filling - 1 })),
    'a board too many': () => spoil(0, ({ filling }) => ({ filling: filling + 1 })),
    'a shorter pressing': () => spoil(1, () => ({ pressTime: 2700 })),
    'a shorter rest': () => spoil(0, ({ rest }) => ({ rest: rest - 1 })),
    'a shorter assembly': () => spoil(0, ({ assembly }) => ({ assembly: assembly - 1 })),
    'a time from the wrong cap': () => spoil(0, ({ closed }) => ({ closed: closed - 60 })),
    'an order refused without need': () => ({
      loads: right.loads.slice(0, -1),
      refused: [...right.refused, { order: 'O-5', why: 'too-strong', is: 2, most: 1 }],
    }),
    'a refusal left out': () => ({ ...right, refused: [] }),
    'a refusal for another cause': () => ({ ...right, refused: [{ ...right.refused[0]!, why: 'too-slow' }] }),
    'a refusal that holds nothing against it': () => ({ ...right, refused: [{ ...right.refused[0]!, is: 0.9 }] }),
  };
  for (const name of ['height', 'force', 'gauge', 'scale'] as const) {
    spoilt[`${name}: a band widened below`] = () => band(name, 'low', 0.999);
    spoilt[`${name}: a band widened above`] = () => band(name, 'high', 1.001);
  }

  /** Two loads that follow each other as one stack, with every figure as it then would be. */
  function merged(low: Load, high: Load): Answer {
    const stack = [...low.stacks.flat(), ...high.stacks.flat()];
    const turn = stack.map(({ order }) => jobs.find((job) => job.order === order)!);
    const { filling, numbers: n } = weigh([turn], turn, PRESS);
    const one: Load = {
      ...low,
      stacks: [stack],
      filling,
      height: { low: n.heightLow, high: n.heightHigh },
      force: { low: n.forceLow, high: n.forceHigh },
      gauge: { low: n.gaugeLow, high: n.gaugeHigh },
      scale: { low: n.scaleLow, high: n.scaleHigh },
      assembly: n.assembly,
      closed: n.closed,
      pressTime: n.pressTime,
      rest: n.rest,
    };
    return { ...right, loads: right.loads.flatMap((load) => (load === low ? [one] : load === high ? [] : [load])) };
  }

  test.each(Object.entries(spoilt))('%s', (_name, answer) => {
    expect(judge(jobs, PRESS, answer())).not.toEqual([]);
  });

  test('one load of two adhesives, or of bodies that refuse each other, by that very cause', () => {
    expect(judge(jobs, PRESS, merged(second!, third!))).toEqual(['load 1: two adhesives']);
    expect(judge(jobs, PRESS, merged(third!, fourth!))).toContain('load 2: bodies refuse each other');
  });
});

describe('a program that knew one limit less would be found out', () => {
  const free: Record<string, (press: Press, jobs: readonly PressJob[]) => [Press, readonly PressJob[]]> = {
    daylight: (press, jobs) => [{ ...press, daylight: press.daylight + 0.03 }, jobs],
    'closed height': (press, jobs) => [{ ...press, closedHeight: 0 }, jobs],
    capacity: (press, jobs) => [{ ...press, capacity: 1e9 }, jobs],
    'most of the gauge': (press, jobs) => [{ ...press, gaugeMost: 1e9, gaugeFull: 1e9 }, jobs],
    plate: (press, jobs) => [{ ...press, plate: { length: 9, width: 9 } }, jobs],
    'stacks side by side': (press, jobs) => [{ ...press, sideBySide: press.sideBySide + 1 }, jobs],
    'open time': (press, jobs) => [press, jobs.map((job) => ({ ...job, openTime: job.openTime + 60 }))],
    'closed time': (press, jobs) => [press, jobs.map(({ closedTime: _closed, ...job }) => job)],
    adhesive: (press, jobs) => [press, jobs.map((job) => ({ ...job, adhesive: 'white glue' }))],
    'joint of each': (press, jobs) => [press, jobs.map((job) => ({ ...job, jointArea: 0.11 }))],
    hand: (press, jobs) => [press, jobs.map((job) => ({ ...job, hand: 'right' as const }))],
    'closing the press': (press, jobs) => [{ ...press, closeTime: 0 }, jobs],
  };

  test.each(Object.entries(free))('%s', (_name, loosen) => {
    const caught = SEEDS.slice(0, 150).filter((seed) => {
      const { jobs, press } = chanceCase(seed, 12, 7);
      const [loosePress, looseJobs] = loosen(press, jobs);
      return judge(jobs, press, loadsOf(looseJobs, loosePress)).length > 0;
    });
    expect(caught.length).toBeGreaterThan(10);
  });
});

test('ten thousand bodies are no matter of minutes', () => {
  const many = chanceJobs(seeded(7), 2500, 8);
  expect(total(many)).toBeGreaterThan(9000);
  const press = { ...PRESS, sideBySide: 3, plate: { length: 1.2, width: 0.55 } };
  const start = performance.now();
  const answer = loadsOf(many, press);
  expect(performance.now() - start).toBeLessThan(10_000);
  expect(answer.loads.length).toBeGreaterThan(900);
});
