/** Press loads worked by hand, on the press of the demo plant. Its rams have 2 × π × 0.1² ÷ 4 = 0.015708 m². */
import { describe, expect, test } from 'vitest';
import type { Load, Press, PressJob } from '../../src/run/loads.ts';
import { loadsOf } from '../../src/run/loads.ts';
import { JOB, PRESS } from './plant.ts';

const job = (order: string, bodies: number, other: Partial<PressJob> = {}): PressJob => ({
  ...JOB,
  model: order,
  ...other,
  order,
  bodies,
});
const slow = { openTime: 1200, closedTime: 1200 };
const names = ({ stacks }: Load): string[] => stacks.map((stack) => stack.map(({ order }) => order).join(' '));
const pressed = (jobs: readonly PressJob[], press: Press = PRESS): readonly Load[] => {
  const { loads, refused } = loadsOf(jobs, press);
  expect(refused).toEqual([]);
  return loads;
};
const stacked = (jobs: readonly PressJob[], press: Press = PRESS): string[][] => pressed(jobs, press).map(names);
const mm = ({ low, high }: { low: number; high: number }): number[] => [low, high].map((one) => one * 1000);
const MPa = ({ low, high }: { low: number; high: number }): number[] => [low, high].map((one) => one / 1e6);
const close = (is: readonly number[], wanted: readonly number[], digits: number): void =>
  is.forEach((one, at) => expect(one).toBeCloseTo(wanted[at]!, digits));

test('one stack of five alike', () => {
  const [load, ...none] = pressed([job('A', 5)]);
  expect(none).toEqual([]);
  expect(names(load!)).toEqual(['A A A A A']);
  expect(load!.filling).toBe(0);
  // 5 × 50.62 + 6 × 20 = 373.10 and 5 × 51.08 + 6 × 20 = 375.40: 374.25 ± 1.15.
  close(mm(load!.height), [373.1, 375.4], 9);
  // 650 kPa × 0.13455 m² = 87 457.5 N and 750 kPa × 0.13455 m² = 100 912.5 N.
  close([load!.force.low, load!.force.high], [87_457.5, 100_912.5], 6);
  // 87 457.5 ÷ 0.015708 = 5.568 MPa, 100 912.5 ÷ 0.015708 = 6.424 MPa; of 18 MPa 0.3093 and 0.3569.
  close(MPa(load!.gauge), [5.568, 6.424], 3);
  close([load!.scale.low, load!.scale.high], [0.3093, 0.3569], 4);
  // 5 × (60 + 20) + 40 = 440 s of 480, less the first spreading 380 s of 420. Six would take 520 s.
  expect([load!.assembly, load!.closed, load!.pressTime, load!.rest]).toEqual([440, 380, 2700, 43_200]);
});

test('early loads are filled, and a body left over gets filling boards', () => {
  const loads = pressed([job('A', 11)]);
  expect(loads.map(names)).toEqual([['A A A A A'], ['A A A A A'], ['A']]);
  // 50.62 + 2 × 20 = 90.62, the plate needs 120: 29.38 ÷ 20, so 2 boards: 130.62 to 131.08.
  expect(loads[2]!.filling).toBe(2);
  close(mm(loads[2]!.height), [130.62, 131.08], 9);
});

test('stacks side by side where there is time: two of five, at twice the force', () => {
  // 10 × 80 + 40 = 840 s of 1200; six on each other are 6 × 51.08 + 7 × 20 = 446.48, and the press opens 400.
  const [load, ...none] = pressed([job('A', 10, slow)]);
  expect(none).toEqual([]);
  expect(names(load!)).toEqual(['A A A A A', 'A A A A A']);
  close([load!.force.low, load!.force.high], [174_915, 201_825], 6);
  close(MPa(load!.gauge), [11.135, 12.849], 3);
  close(mm(load!.height), [373.1, 375.4], 9);
});

describe('a mixed stack', () => {
  test('takes the force that both bear', () => {
    // B: 650 kPa × 0.12 = 78 000 N, 750 kPa × 0.12 = 90 000 N. A from 87 457.5: they meet in 87 457.5 to 90 000.
    const [load, ...none] = pressed([job('A', 2), job('B', 3, { jointArea: 0.12, pressTime: 3600, rest: 10 })]);
    expect(none).toEqual([]);
    expect(names(load!)).toEqual(['A A B B B']);
    close([load!.force.low, load!.force.high], [87_457.5, 90_000], 6);
    close(MPa(load!.gauge), [5.568, 5.73], 3);
    // Under pressure as long as B needs, rested as long as A does.
    expect([load!.pressTime, load!.rest]).toEqual([3600, 43_200]);
  });

  test('is none where two refuse each other, or are glued with two adhesives', () => {
    // C bears 750 kPa × 0.1 = 75 000 N at most, and A needs 87 457.5.
    const small = { jointArea: 0.1 };
    expect(stacked([job('A', 1), job('C', 1, small), job('D', 1)])).toEqual([['A'], ['C'], ['D']]);
    expect(stacked([job('A', 2), job('B', 2, { adhesive: 'urea glue' })])).toEqual([['A A'], ['B B']]);
  });

  test('left and right lie on each other', () => {
    const [load] = pressed([job('A', 1), job('B', 1, { model: 'A', hand: 'left' })]);
    expect(load!.stacks).toEqual([
      [
        { order: 'A', model: 'A', hand: 'right' },
        { order: 'B', model: 'A', hand: 'left' },
      ],
    ]);
  });
});

describe('beside each other', () => {
  // Two on each other: 2 × 51.08 + 3 × 20 = 162.16; three would be 233.24.
  const low = { ...PRESS, daylight: 0.17 };

  test('only stacks alike from the bottom up, each in the turn of the list', () => {
    const of = (text: string) => [...text].map((model, at) => job(`${model}${at}`, 1, { ...slow, model }));
    expect(stacked(of('ABAB'), low)).toEqual([['A0 B1', 'A2 B3']]);
    expect(stacked(of('AABB'), low)).toEqual([['A0 B2', 'A1 B3']]);
    // Laid in turn, they grow level.
    expect(stacked(of('AAAA'), low)).toEqual([['A0 A2', 'A1 A3']]);
    expect(stacked(of('ABBA'), low)).toEqual([['A0 B1'], ['B2 A3']]);
    // Filled to the brim from the front it would take three: A A, B A, B.
    expect(stacked(of('AABAB'), low)).toEqual([['A0'], ['A1 B2', 'A3 B4']]);
  });

  test('hands are not alike, nor are joints or blanks', () => {
    const turned = job('B', 1, { ...slow, model: 'A', hand: 'left' });
    const flat = { ...PRESS, daylight: 0.1 };
    expect(stacked([job('A', 2, slow)], { ...flat, closedHeight: 0 })).toEqual([['A', 'A']]);
    expect(stacked([job('A', 1, slow), turned], { ...flat, closedHeight: 0 })).toEqual([['A'], ['B']]);
    const larger = job('B', 1, { ...slow, model: 'A', jointArea: 0.135 });
    expect(stacked([job('A', 1, slow), larger], { ...flat, closedHeight: 0 })).toEqual([['A'], ['B']]);
    const thicker = job('B', 1, { ...slow, model: 'A', blank: { low: 0.0508, high: 0.0513 } });
    expect(stacked([job('A', 1, slow), thicker], { ...flat, closedHeight: 0 })).toEqual([['A'], ['B']]);
  });

  test('only what the plate reaches', () => {
    // 2 × 0.45 = 0.9 m just fits, 2 × 0.451 does not.
    expect(stacked([job('A', 10, { ...slow, width: 0.45 })])).toEqual([['A A A A A', 'A A A A A']]);
    expect(stacked([job('A', 10, { ...slow, width: 0.451 })])).toEqual([['A A A A A'], ['A A A A A']]);
  });

  test('where it brings the gauge to the middle of its scale, but never at the cost of a load', () => {
    // 600 kPa × 0.1 = 60 000 N are 3.820 MPa, 0.2122 of the scale; two stacks 0.4244.
    const weak = { jointArea: 0.1, pressure: { low: 600e3, high: 700e3 } };
    const loads = pressed([job('A', 4, weak)]);
    expect(loads.map(names)).toEqual([['A A', 'A A']]);
    expect(loads[0]!.scale.low).toBeCloseTo(0.4244, 4);
    expect(stacked([job('A', 5, weak)])).toEqual([['A A A A A']]);
    // Six need two loads however cut: four and two are read well, five and one are not.
    expect(stacked([job('A', 6, weak)])).toEqual([
      ['A A', 'A A'],
      ['A', 'A'],
    ]);
  });
});

describe('the press bears', () => {
  test('what its gauge may show: the band is cut, or the load is smaller', () => {
    const ten = [job('A', 10, slow)];
    // Two stacks take 11.135 to 12.849 MPa. 12 MPa × 0.015708 = 188 495.6 N.
    const [load] = pressed(ten, { ...PRESS, gaugeMost: 12e6 });
    expect(load!.gauge.high).toBe(12e6);
    expect(load!.force.high).toBeCloseTo(188_495.6, 1);
    expect(stacked(ten, { ...PRESS, gaugeMost: 11e6 })).toEqual([['A A A A A'], ['A A A A A']]);
    expect(pressed(ten, { ...PRESS, gaugeFull: 12.5e6 })[0]!.scale.high).toBe(1);
  });

  test('what it is rated for', () => {
    expect(pressed([job('A', 1)], { ...PRESS, capacity: 95e3 })[0]!.force.high).toBe(95e3);
    expect(stacked([job('A', 10, slow)], { ...PRESS, capacity: 170e3 })).toEqual([['A A A A A'], ['A A A A A']]);
  });
});

test('time: a second too much is a body less', () => {
  const sizes = (times: Partial<PressJob>) => pressed([job('A', 5, times)]).map(({ stacks }) => stacks.flat().length);
  // Five take 440 s, and 380 s from the first cap laid.
  expect(sizes({ openTime: 440, closedTime: 380 })).toEqual([5]);
  expect(sizes({ openTime: 439 })).toEqual([4, 1]);
  expect(sizes({ closedTime: 379 })).toEqual([4, 1]);
  // The one with the shortest time rules the load: three with B take 280 s.
  expect(stacked([job('A', 3), job('B', 2, { openTime: 280 })])).toEqual([['A A A'], ['B B']]);
});

describe('refused', () => {
  const why = (other: Partial<PressJob>, press: Press = PRESS) => {
    const { loads, refused } = loadsOf([job('A', 1), job('X', 2, other), job('B', 1)], press);
    // What is left of the list closes up.
    if (press === PRESS) expect(loads.map(names)).toEqual([['A B']]);
    return refused.find(({ order }) => order === 'X');
  };

  test('too large for the plate', () => {
    expect(why({ width: 0.91 })).toEqual({ order: 'X', why: 'too-large', is: 0.91, most: 0.9 });
    expect(why({ length: 0.56 })).toEqual({ order: 'X', why: 'too-large', is: 0.56, most: 0.55 });
  });

  test('too high, by itself or with the boards the plate needs', () => {
    // 0.361 + 2 × 0.02.
    const high = why({ blank: { low: 0.36, high: 0.361 } });
    expect(high).toMatchObject({ why: 'too-high', most: 0.4 });
    expect(high!.is).toBeCloseTo(0.401, 9);
    // 90.62 to 400 lack 309.38: 16 boards, 411.08 at the thickest.
    expect(why({}, { ...PRESS, closedHeight: 0.4 })!.is).toBeCloseTo(0.41108, 9);
    // 4 × 80 + 5 × 20 = 420 mm, as high as the press opens, though the doubles say a hair more.
    expect(5 * 0.02 + 0.08 + 0.08 + 0.08 + 0.08).toBeGreaterThan(0.42);
    const level = job('A', 4, { blank: { low: 0.08, high: 0.08 } });
    expect(stacked([level], { ...PRESS, daylight: 0.42 })).toEqual([['A A A A']]);
  });

  test('too strong for the gauge or the press', () => {
    // 1.7 MPa × 0.13455 = 228 735 N; 14 MPa on the rams are 219 911.5 N.
    const strong = why({ pressure: { low: 1.7e6, high: 1.8e6 } });
    expect(strong!.why).toBe('too-strong');
    close([strong!.is, strong!.most], [228_735, 219_911.5], 1);
    const rated = { ...PRESS, capacity: 80e3 };
    expect(why({}, rated)).toMatchObject({ why: 'too-strong', most: 80e3 });
  });

  test('too slow for its glue', () => {
    // One body: 60 + 20 + 40 = 120 s, and 60 s from its cap laid.
    expect(why({ openTime: 119 })).toEqual({ order: 'X', why: 'too-slow', is: 120, most: 119 });
    expect(why({ closedTime: 59 })).toEqual({ order: 'X', why: 'too-slow', is: 60, most: 59 });
  });
});

test('an order of nothing, a list of nothing, a press of nothing', () => {
  expect(loadsOf([job('A', 0)], PRESS)).toEqual({ loads: [], refused: [] });
  expect(loadsOf([], PRESS)).toEqual({ loads: [], refused: [] });
  expect(() => loadsOf([], { ...PRESS, board: 0 })).toThrow(RangeError);
  expect(() => loadsOf([], { ...PRESS, sideBySide: 0 })).toThrow(RangeError);
});
