/** Loads of the press: bodies on each other are in series, stacks side by side add, and what does not agree is refused. */
import { expect, test } from 'vitest';
import fc from 'fast-check';
import type { PressedBody } from '../../src/derive/press-load.ts';
import { bodyForce, gaugeOf, loadForce, stackForce } from '../../src/derive/press-load.ts';

const body = (name: string, jointArea: number, low: number, high: number): PressedBody => ({
  name,
  jointArea,
  pressure: { low, high },
});
const rams = { count: 2, bore: 0.1 };
const one = body('one', 0.12, 650_000, 750_000);

function held(result: ReturnType<typeof loadForce>) {
  if (!result.ok) throw new Error(`refused: ${result.needs.name} against ${result.bears.name}`);
  return result;
}

test('two bodies on each other take the gauge of one, two side by side the double', () => {
  const single = gaugeOf(held(loadForce([[one]])).force, rams);
  expect(single.low).toBeCloseTo((650_000 * 0.12) / ((2 * Math.PI * 0.1 ** 2) / 4), 6);
  expect(gaugeOf(held(loadForce([[one, one]])).force, rams)).toEqual(single);
  const double = gaugeOf(held(loadForce([[one], [one]])).force, rams);
  expect(double.low).toBeCloseTo(2 * single.low, 6);
  expect(double.high).toBeCloseTo(2 * single.high, 6);
});

test('a mixed stack takes only what every body in it takes', () => {
  const bigger = body('bigger', 0.13, 650_000, 750_000);
  const { force } = held(stackForce([one, bigger]));
  expect(force).toEqual({ low: bodyForce(bigger).low, high: bodyForce(one).high });
});

test('a stack whose bodies contradict each other is refused, with both of them and the forces', () => {
  const small = body('small', 0.1, 650_000, 750_000);
  const result = stackForce([one, small]);
  expect(result).toEqual({
    ok: false,
    needs: { name: 'one', force: bodyForce(one).low },
    bears: { name: 'small', force: bodyForce(small).high },
  });
  expect(loadForce([[one], [one, small]])).toEqual(result);
});

test('different stacks side by side: while the force of the whole goes up and down, none leaves its own band', () => {
  const band = fc.record({
    jointArea: fc.double({ min: 0.05, max: 0.3, noNaN: true }),
    low: fc.double({ min: 3e5, max: 1e6, noNaN: true }),
    over: fc.double({ min: 1.01, max: 2, noNaN: true }),
  });
  fc.assert(
    fc.property(fc.array(band, { minLength: 1, maxLength: 4 }), (bands) => {
      const stacks = bands.map(({ jointArea, low, over }, i) => [body(`${i}`, jointArea, low, low * over)]);
      const { force, shares } = held(loadForce(stacks));
      expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12);
      expect(force.low).toBeLessThanOrEqual(force.high);
      for (const total of [force.low, force.high]) {
        stacks.forEach(([only], i) => {
          const own = bodyForce(only!);
          expect(total * shares[i]!).toBeGreaterThanOrEqual(own.low * (1 - 1e-12));
          expect(total * shares[i]!).toBeLessThanOrEqual(own.high * (1 + 1e-12));
        });
      }
    }),
  );
});

test('nothing in the press is no load', () => {
  expect(() => stackForce([])).toThrow(RangeError);
});
