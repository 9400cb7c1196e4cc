/** Long drills: how long they must be, where they stop. Worked out by hand from the sample's own numbers. */
import { expect, test } from 'vitest';
import type { Change } from './told.ts';
import { idsOf, inSample } from './told.ts';

const ids = (...changes: readonly Change[]): string[] => idsOf(inSample(...changes));

// pickup-wire ends at y 44 and comes in over the body's edge at y 220: 176 mm, and 2 in 121 of fall: 176.024.
const drill = (reach: string): Change => [
  'plant/plant',
  'diameter: 6\n    reach: 300',
  `diameter: 6\n    reach: ${reach}`,
];
test.each([
  ['176.03', []],
  ['176.02', ['cutter-too-short']],
])('a long drill of %s', (reach, found) => expect(ids(drill(reach))).toEqual(found));

test('what it takes before the channel is told by itself', () => {
  // From its start at y 165: 55, and the fall.
  expect(inSample(drill('150'))[0]!.what).toMatch(/needs 176\.02 mm: 121\.02 mm for itself and 55\.01 mm before it/);
});

// The bridge pickup ends at y 25: the drill, 6 wide, may go to y 19, all but level.
const end = (y: string): Change => ['tarn', 'end: { x: 0, y: 44 }', `end: { x: 0, y: ${y} }`];
test.each([
  ['25.1', []],
  ['19.01', []],
  ['18.99', ['channel-runs-on']],
  ['-230', ['channel-runs-on']],
])('a channel that ends at y %s', (y, found) => expect(ids(end(y))).toEqual(found));

test('past the side or into the wood, and where', () => {
  const [wood] = inSample(end('10'));
  expect(wood!.what).toMatch(
    /leaves the cavity bridge-pickup at x 0\.0, y 25\.0 mm and goes on for 15\.00 mm, into the wood behind it/,
  );
  const [side] = inSample(end('-230'));
  expect(side!.what).toMatch(/goes on for 255\.00 mm, through the side of the body, to x 0\.0, y -230\.0 mm/);
});

test('one that stops too soon is no case of it', () => {
  expect(ids(end('72'))).not.toContain('channel-runs-on');
});
