/**
 * Neck screws against the cheek of their pocket. It is 56 wide about x 0, the hole 4.5: its middle may lie 28 − 2.25 = 25.75
 * off, less what two set-ups may put it aside.
 */
import { expect, test } from 'vitest';
import type { Change } from './told.ts';
import { idsOf, inSample } from './told.ts';

const at = (x: string): Change => ['base/bolt-on', 'at: { x: 18, y: 200 }', `at: { x: ${x}, y: 200 }`];

test('the limit is the worst that is told, from both sides', () => {
  const [one] = inSample(at('27'));
  expect(one!.id).toBe('screw-in-the-wall');
  expect(one!.what).toMatch(
    /is 4\.50 mm wide\. Its middle, .* lies in neck-pocket, 1\.00 mm from its wall\. As drawn 1\.25 mm of it is drilled/,
  );
  const by = Number(/Move the hole (\d\.\d\d) mm/.exec(one!.mend)![1]);
  // No less than what is drawn in the wall, and no more than the line lets two set-ups lie apart besides.
  expect(by).toBeGreaterThan(1.25);
  expect(by).toBeLessThan(1.25 + 0.9);
  expect(idsOf(inSample(at((27 - by - 0.01).toFixed(2))))).toEqual([]);
  expect(idsOf(inSample(at((27 - by + 0.01).toFixed(2))))).toEqual(['screw-in-the-wall']);
});

test.each([
  ['28.5', '0.50 mm past the wall of neck-pocket, in the wood'],
  ['-27', 'in neck-pocket, 1.00 mm from its wall'],
])('at x %s', (x, where) => {
  const [one] = inSample(at(x));
  expect(one!.what).toContain(where);
});

test('beside the pocket altogether it is one that misses', () => {
  expect(idsOf(inSample(at('32')))).not.toContain('screw-in-the-wall');
});
