/** Pins against the holes they go into: either side of the limit, worked out by hand. */
import { expect, test } from 'vitest';
import type { Change } from './told.ts';
import { idsOf, inDemo, inSample } from './told.ts';

const jig = (depth: string): Change => ['tarn', 'depth: 12 ±1.0 }', `depth: ${depth} }`];
// The right hand's top fixture: both hands drill the same holes.
const pins = (length: string): Change => {
  const row =
    'pins: { tooling-hole-a: { fit: g6 }, tooling-hole-b: { kind: diamond, diameter: 7.84..7.86, land: 1.4 } }';
  const head = `tarn-top-right:\n    title: Tarn top R\n    hand: right\n    ${row}\n`;
  return ['plant/plant', `${head}    pin-length: 8 ±0.2`, `${head}${length && `    pin-length: ${length}`}`];
};

// The jig's holes are 12 less 1.0 deep at worst, the pins 8 and 0.2 more.
test.each([
  ['9.20 ±1.0', []],
  ['9.19 ±1.0', ['pin-too-long']],
  ['8.20 ±0', []],
])('a hole of the jig %s deep, pins 8 ±0.2', (depth, ids) => {
  expect(idsOf(inSample(jig(depth)))).toEqual(ids);
});

test('limits of both count, and the nearest depth is told', () => {
  const [one] = inSample(jig('9.0 ±1.0'));
  expect(one!.what).toMatch(/8\.20 mm long.*no deeper than 8\.00 mm.*0\.20 mm off the fixture/);
  expect(one!.mend).toMatch(/9\.20 mm deep/);
});

// Tooling holes are 12 less 0.5 deep at worst.
test.each([
  ['11.3 ±0.2', []],
  ['11.31 ±0.2', ['pin-too-long']],
  ['', []],
])('pins of the top fixture %s long', (length, ids) => {
  expect(idsOf(inSample(pins(length)))).toEqual(ids);
});

test('a tooling hole that is too shallow is told alone, both where the pins are too long', () => {
  const shallow: Change = [
    'base/bolt-on',
    'y: 183 },\n      diameter: 8 +0.05/-0,\n      from: back-face,\n      depth: 12.0 ±0.5',
    'y: 183 },\n      diameter: 8 +0.05/-0,\n      from: back-face,\n      depth: 8.6 ±0.5',
  ];
  const [one] = inSample(shallow);
  expect(one!.what).toMatch(/The pin for tooling-hole-a .*8\.20 mm long.*8\.10 mm/);
  expect(one!.notes).toHaveLength(1);
  expect(inSample(pins('12 ±0.2'))[0]!.notes).toHaveLength(2);
});

// Voe's back alone lies on its back for the chambers: the jig drills from the other face.
test.each([
  ['', []],
  [', depth: 12 ±1.0', ['pin-meets-no-hole']],
])('pinned from below, holes of the jig: %s', (depth, ids) => {
  expect(
    idsOf(inDemo('voe', ['voe', 'location: { jig: jig-p2-right }', `location: { jig: jig-p2-right${depth} }`])),
  ).toEqual(ids);
});

test('what locates the top must open at the back', () => {
  const [one, ...more] = inSample([
    'base/bolt-on',
    'holes:\n  tooling-hole-a:\n    {\n      setup: back,\n      at: { x: 0, y: 183 },\n      diameter: 8 +0.05/-0,\n      from: back-face,',
    'holes:\n  tooling-hole-a:\n    {\n      setup: top,\n      at: { x: 0, y: 183 },\n      diameter: 8 +0.05/-0,\n      from: cap-face,',
  ]);
  // Drilled in the set-up itself: not there yet, which is said by another check.
  expect([one!.id, ...idsOf(more)]).toEqual(['location-poor']);
});
