import { describe, expect, test } from 'vitest';
import { distanceToEdge, contains } from '../../src/geometry/nearness.ts';
import { spreadAlong } from '../../src/geometry/spread-along.ts';
import { stadium } from '../../src/geometry/stadium.ts';
import { signedArea } from '../../src/geometry/measure.ts';

/** A circle of 100 mm about the origin, counter-clockwise, corners on it. */
const circle = Float64Array.from(
  Array.from({ length: 720 }, (_, i) => [
    100 * Math.cos((i * Math.PI) / 360),
    100 * Math.sin((i * Math.PI) / 360),
  ]).flat(),
);

/** Degrees clockwise from +y. */
const bearing = ({ x, y }: { x: number; y: number }): number => ((Math.atan2(x, y) * 180) / Math.PI + 360) % 360;

describe('points spread along a line', () => {
  test('four of a circle stand half a step from +y and a quarter turn apart, clockwise', () => {
    const points = spreadAlong(circle, 4, () => true)!;
    expect(points.map((point) => Math.round(bearing(point)))).toEqual([45, 135, 225, 315]);
  });

  test('a line the other way round gives the same', () => {
    const back = Float64Array.from({ length: 1440 }, (_, i) => circle[1440 - 2 - (i - (i % 2)) + (i % 2)]!);
    expect(signedArea(back)).toBeLessThan(0);
    const points = spreadAlong(back, 4, () => true)!;
    expect(points.map((point) => Math.round(bearing(point)))).toEqual([45, 135, 225, 315]);
  });

  test('what is not free is passed over: on the right half alone, at even steps of it', () => {
    const points = spreadAlong(circle, 3, (x) => x > 0)!;
    expect(points.map((point) => Math.round(bearing(point)))).toEqual([30, 90, 150]);
  });

  test('nothing where nothing is free, or the line does not cross the centreline', () => {
    expect(spreadAlong(circle, 3, () => false)).toBeUndefined();
    expect(
      spreadAlong(
        circle.map((v, i) => (i % 2 === 0 ? v + 200 : v)),
        3,
        () => true,
      ),
    ).toBeUndefined();
  });
});

describe('what a blade takes along a line', () => {
  test('all that lies no further from it, and hardly more', () => {
    const [from, to, radius] = [{ x: 3, y: -7 }, { x: -20, y: 31 }, 2.6];
    const strip = stadium(from, to, radius);
    expect(signedArea(strip)).toBeGreaterThan(0);
    const line = Float64Array.of(from.x, from.y, to.x, to.y);
    for (let x = -26; x < 9; x += 0.37) {
      for (let y = -13; y < 37; y += 0.41) {
        const away = distanceToEdge(line, x, y);
        if (away < radius) expect(contains(strip, x, y)).toBe(true);
        if (away > radius * 1.002) expect(contains(strip, x, y)).toBe(false);
      }
    }
  });

  test('of one point, a round', () => {
    const area = signedArea(stadium({ x: 1, y: 2 }, { x: 1, y: 2 }, 5));
    expect(area).toBeGreaterThan(Math.PI * 25);
    expect(area).toBeLessThan(Math.PI * 25 * 1.002);
  });
});
