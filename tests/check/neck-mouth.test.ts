/** The mouth of the neck pocket. In the sample the body ends level at y 220, and the pocket 38 beyond its middle. */
import { expect, test } from 'vitest';
import type { Change } from './told.ts';
import { idsOf, inSample, ofLeft } from './told.ts';

const at = (y: string): Change => [
  'tarn',
  'neck-pocket: { at: { x: 0, y: 190 }',
  `neck-pocket: { at: { x: 0, y: ${y} }`,
];

// The neck is 55.85 wide at most, less 0.25 at either side: 27.675. There the corner of 6 is 5.675 off its middle at 22.
// and stands 1.95 over it: the corner's middle may lie 1.95 under the edge, at 218.05, and the pocket's at 186.05; but
// for a hair: two ears of 0.0025 mm² are 0.12 high.
test.each([
  ['186.05', []],
  ['185.85', ['pocket-closed-at-neck']],
  ['184', ['pocket-closed-at-neck']],
])('a pocket whose middle lies at y %s', (y, found) => {
  expect(idsOf(inSample(at(y)))).toEqual(found);
});

test('says how much wood stands there, and what it says would pass does', () => {
  const [one] = inSample(at('184'));
  const by = Number(/Move the pocket (\d\.\d\d) mm/.exec(one!.mend)![1]);
  expect(by).toBeGreaterThan(1.8);
  expect(by).toBeLessThan(2.1);
  expect(idsOf(inSample(at((184 + by).toFixed(2))))).toEqual([]);
  expect(idsOf(inSample(at((184 + by - 0.02).toFixed(2))))).toEqual(['pocket-closed-at-neck']);
});

// Ends 4 inside the edge: all of the width is closed.
test('a wall right across', () => {
  const short: Change = ['base/bolt-on', 'length: 76, width: 56', 'length: 52, width: 56'];
  const [one] = inSample(short);
  expect(one!.what).toMatch(/Between neck-pocket and the edge of the body \d\.\d\d mm of wood/);
  expect(Number(/body (\d\.\d\d) mm/.exec(one!.what)![1])).toBeGreaterThanOrEqual(4);
});

test('the left hand too', () => {
  expect(idsOf(inSample(ofLeft('cavities: { neck-pocket: { at: { y: 184 } } }')))).toEqual(['pocket-closed-at-neck']);
});
