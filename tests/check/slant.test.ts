/** Which end of a pickup lies nearer to the bridge: a caution, which can be let stand. */
import { expect, test } from 'vitest';
import type { Change } from './told.ts';
import { idsOf, inDemo, inSample, ofLeft, saidBy } from './told.ts';

const turned = (angle: string): Change => [
  'tarn',
  'at: { x: 0, y: 44 }\n    from: cap-face',
  `at: { x: 0, y: 44 }\n    angle: ${angle}\n    from: cap-face`,
];

test.each([
  ['-2 deg', false],
  ['0 deg', false],
  ['0.05 deg', false],
  ['0.06 deg', true],
  ['2 deg', true],
  // Turned by a half it is the same cavity.
  ['178 deg', false],
  ['-178 deg', true],
])('turned by %s', (angle, told) => {
  expect(idsOf(inSample(turned(angle))).includes('slant-other-way')).toBe(told);
});

test('a caution that says which way and how far, and the way back', () => {
  const [one] = inSample(turned('2 deg'));
  expect(one).toMatchObject({ id: 'slant-other-way', severity: 'caution' });
  expect(one!.what).toMatch(/bridge-pickup lies 2° askew with its bass end nearer to the bridge/);
  expect(one!.mend).toContain('`angle: -2°`');
});

test('the left hand, mirrored, by the same sign', () => {
  expect(idsOf(inSample(ofLeft('cavities: { bridge-pickup: { angle: 2 deg } }')))).toEqual(['slant-other-way']);
  expect(idsOf(inSample(ofLeft('cavities: { bridge-pickup: { angle: -2 deg } }')))).toEqual([]);
});

// A slot is drawn along the centreline and turned across.
test.each([
  ['88 deg', 0],
  ['92 deg', 1],
])('a slot turned by %s', (angle, times) => {
  const found = inDemo('carr', ['carr', 'angle: 90 deg', `angle: ${angle}`]);
  expect(saidBy('slant-other-way', found)).toHaveLength(times);
});

test('a permit lets it stand', () => {
  const permit = 'permits: { slant-other-way: { reason: drawn so, name: R. Holm, until: 2099-01-01 } }';
  const note = 'notes: { sizing: Sand the glue faces last. }';
  expect(idsOf(inSample(turned('2 deg'), ['tarn', note, `${note}\n${permit}`]))).toEqual([]);
});
