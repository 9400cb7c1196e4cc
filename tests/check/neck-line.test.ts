/** The neck's line against the bridge's middle. Machine and pins leave 0.15 and 0.15 of the 0.40 the line wants: 0.10. */
import { expect, test } from 'vitest';
import type { Change } from './told.ts';
import { idsOf, inSample, ofLeft } from './told.ts';

const pocket = (x: string, angle = ''): Change => [
  'tarn',
  'neck-pocket: { at: { x: 0, y: 190 }',
  `neck-pocket: { ${angle && `angle: ${angle}, `}at: { x: ${x}, y: 190 }`,
];
const ids = (...changes: readonly Change[]): string[] => idsOf(inSample(...changes));

test.each([
  ['0.10', []],
  ['0.11', ['neck-beside-bridge']],
  ['-0.10', []],
  ['-0.11', ['neck-beside-bridge']],
])('a pocket at x %s', (x, found) => expect(ids(pocket(x))).toEqual(found));

// From y 190 to the bridge at y -3: 193 mm. 193 · sin 0.0297° is 0.100, 193 · sin 0.0296° is 0.0997.
test.each([
  ['0.0296 deg', []],
  ['0.0298 deg', ['neck-beside-bridge']],
  ['-0.0298 deg', ['neck-beside-bridge']],
])('a pocket turned by %s', (angle, found) => expect(ids(pocket('0', angle))).toEqual(found));

test('what counts is the line at the bridge: 193 · tan 1° are 3.369', () => {
  expect(ids(pocket('-3.369', '1 deg'))).not.toContain('neck-beside-bridge');
  expect(ids(pocket('-3.569', '1 deg'))).toContain('neck-beside-bridge');
});

test.each([
  ['at: { x: 2 }', pocket('2'), /passes 2\.00 mm to the treble side .*another 0\.30 mm apart: 2\.30 mm in all/],
  ['angle: -2 deg', pocket('0', '-2 deg'), /passes 6\.74 mm to the bass side/],
])('the left hand says the same of its own: %s', (text, right, what) => {
  const [one] = inSample(right);
  expect(one!.what).toMatch(what);
  expect(inSample(ofLeft(`cavities: { neck-pocket: { ${text} } }`)).map((left) => left.what)).toEqual([one!.what]);
});

test('a stud beside its bridge is a mistake of the stud alone', () => {
  expect(ids(['tarn', 'at: { x: 37, y: -3 }', 'at: { x: 39, y: -3 }'])).toEqual(['mount-without-hole']);
});

test('neck and bridge moved together belong together', () => {
  const moved: Change[] = [
    pocket('1'),
    ['tarn', 'at: { x: 37, y: -3 }', 'at: { x: 38, y: -3 }'],
    ['tarn', 'at: { x: -37, y: -3 }', 'at: { x: -36, y: -3 }'],
    ['tarn', 'on: top, at: { x: 0, y: -3 }', 'on: top, at: { x: 1, y: -3 }'],
  ];
  expect(ids(...moved)).not.toContain('neck-beside-bridge');
  expect(ids(...moved.slice(1))).toContain('neck-beside-bridge');
});
