/** What two pins leave open, against bodies laid on their pins every way they go. */
import { describe, expect, test } from 'vitest';
import { absorbedByDiamond, acrossError, reachOf, rotationError } from '../../src/geometry/two-pin.ts';
import { seeded } from '../faults/seeded.ts';

interface Spot {
  readonly xMm: number;
  readonly yMm: number;
}

/** A body laid on a round pin and a diamond that holds across: first hole anywhere within its play, then turned as far as the second lets it. */
function* layings(first: Spot, second: Spot, plays: { first: number; second: number }) {
  const spacing = Math.hypot(second.xMm - first.xMm, second.yMm - first.yMm);
  const along = { x: (second.xMm - first.xMm) / spacing, y: (second.yMm - first.yMm) / spacing };
  const across = { x: -along.y, y: along.x };
  for (let turn = 0; turn < 360; turn++) {
    const [u, v] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)].map(
      (x) => (x * plays.first) / 2,
    );
    for (const side of [-1, 0, 1]) {
      // The second hole lies against its pin on this side: the angle that puts it there.
      const angle = Math.asin(((side * plays.second) / 2 - v!) / spacing);
      yield (at: Spot): Spot => {
        const [dx, dy] = [at.xMm - first.xMm, at.yMm - first.yMm];
        return {
          xMm: first.xMm + u! * along.x + v! * across.x + dx * Math.cos(angle) - dy * Math.sin(angle),
          yMm: first.yMm + u! * along.y + v! * across.y + dx * Math.sin(angle) + dy * Math.cos(angle),
        };
      };
    }
  }
}

const chance = seeded(20_261_125);
const between = (low: number, high: number) => low + chance.next() * (high - low);
const spot = (): Spot => ({ xMm: between(-180, 180), yMm: between(-220, 220) });

function tries(count: number) {
  return Array.from({ length: count }, () => {
    const [first, second] = [spot(), spot()];
    return { first, second, at: spot(), plays: { first: between(0.01, 0.2), second: between(0.01, 0.2) } };
  }).filter(({ first, second }) => Math.hypot(first.xMm - second.xMm, first.yMm - second.yMm) > 60);
}

describe('a body on two pins, laid every way it goes', () => {
  test('nowhere lies a place farther off than the bound, and each pin alone reaches its part of it', () => {
    for (const { first, second, at, plays } of tries(60)) {
      const reach = reachOf(first, second, at);
      const off = (own: typeof plays) =>
        Math.max(
          ...[...layings(first, second, own)].map((lay) => {
            const to = lay(at);
            return Math.hypot(to.xMm - at.xMm, to.yMm - at.yMm);
          }),
        );
      const bound = (reach.first * plays.first + reach.second * plays.second) / 2;
      expect(off(plays)).toBeLessThanOrEqual(bound * 1.002);
      expect(off(plays)).toBeGreaterThan(bound * 0.7);
      expect(off({ ...plays, second: 0 }) / ((reach.first * plays.first) / 2)).toBeCloseTo(1, 2);
      expect(off({ ...plays, first: 0 }) / ((reach.second * plays.second) / 2)).toBeCloseTo(1, 2);
    }
  });

  test('across the line of the pins it lies off by e(a), and turns by θ', () => {
    const [first, second] = [
      { xMm: 0, yMm: 0 },
      { xMm: 300, yMm: 0 },
    ];
    const plays = { first: 0.03, second: 0.06 };
    for (const along of [-100, 0, 90, 150, 300, 500]) {
      const most = Math.max(
        ...[...layings(first, second, plays)].map((lay) => Math.abs(lay({ xMm: along, yMm: 0 }).yMm)),
      );
      expect(most).toBeCloseTo(acrossError(plays, along, 300), 6);
    }
    const turned = [...layings(first, second, plays)].map((lay) => {
      const [a, b] = [lay(first), lay(second)];
      return Math.abs(Math.atan2(b.yMm - a.yMm, b.xMm - a.xMm));
    });
    expect(Math.max(...turned)).toBeCloseTo(rotationError(plays, 300), 8);
  });
});

/** Whether a pin, a circle of which two caps are cut off `land` apart, lies inside a hole that is `off` along. */
function goesIn(land: number, hole: number, pin: number, off: number): boolean {
  for (let turn = 0; turn < 3600; turn++) {
    const angle = (turn * Math.PI) / 1800;
    const [x, y] = [(pin / 2) * Math.cos(angle), (pin / 2) * Math.sin(angle)];
    // The land lies across: only what is within half its width along is left of the round.
    if (Math.abs(x) > land / 2) continue;
    if (Math.hypot(x - off, y) > hole / 2) return false;
  }
  return true;
}

test('a diamond goes in as far off as the formula says, and no farther', () => {
  for (const [land, hole, pin] of [
    [2, 10, 9.97],
    [1.5, 8, 7.94],
    [1.4, 8, 7.86],
  ] as const) {
    const x = absorbedByDiamond(land, hole, pin);
    expect(goesIn(land, hole, pin, x - 0.002)).toBe(true);
    expect(goesIn(land, hole, pin, x + 0.002)).toBe(false);
  }
  expect(absorbedByDiamond(2, 8, 8.01)).toBe(0);
});
