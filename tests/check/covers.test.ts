/** Covers on the body: inside its edge, beside each other, over what they close, with wood under all of them. */
import { expect, test } from 'vitest';
import type { Change } from './told.ts';
import { idsOf, inDemo, inSample, saidBy } from './told.ts';

const plate = (length: number): Change => [
  'base/bolt-on',
  'shape: { kind: rectangle, length: 52, width: 64 }',
  `shape: { kind: rectangle, length: ${length}, width: 64 }`,
];

// The end of the body lies at y 220; in y 183 a plate of 74 reaches to it. Screws and perimeter are 0.54 apart at worst.
test.each([
  [72.8, []],
  [73, ['cover-off-the-body']],
])('a neck plate %s long', (length, found) => {
  expect(idsOf(inSample(plate(length)))).toEqual(found);
});

test('over the end of a body with a rounded edge: brought in as far as the round', () => {
  const [one] = inDemo('ness', ['ness', 'shape: { length: 60, width: 72 }', 'shape: { length: 90, width: 72 }']);
  expect(one?.id).toBe('cover-off-the-body');
  expect(one?.what).toMatch(/^The edge of the cover neck-plate lies \d\.\d\d mm outside the edge of the body as drawn/);
  expect(one?.mend).toMatch(
    /^Let its edge lie 1\d\.\d\d mm further in there, which brings it off the round of 6\.00 mm/,
  );
});

// A millimetre between them as drawn, and each 0.15 off where its screws are.
test.each([
  [73.3, []],
  [73.5, ['covers-meet']],
])('a cover %s long beside the plate of the jack', (length, found) => {
  expect(idsOf(inDemo('skerry', ['skerry', 'length: 72, width: 98', `length: ${length}, width: 98`]))).toEqual(found);
});

test('on two faces they do not meet', () => {
  const top = '\n  guard: { face: top, shape: { kind: circle, diameter: 20 }, at: { x: 0, y: 80 } }';
  expect(idsOf(inSample(more(top)))).not.toContain('covers-meet');
});

const more = (text: string): Change => [
  'tarn',
  'width: 68 }, at: { x: 0, y: 44 } }',
  `width: 68 }, at: { x: 0, y: 44 } }${text}`,
];

// The seat of the controls begins at x 37.
test.each([
  [36.9, []],
  [37.5, ['cover-over-cut']],
])('the jack plate beside the seat of another cover: its edge at x %s', (edge, found) => {
  const across: Change = [
    'base/bolt-on',
    'diameter: 24 }, at: { x: 24, y: -126 }',
    `diameter: 24 }, at: { x: ${edge - 12}, y: -126 }`,
  ];
  expect(idsOf(inSample(across))).toEqual(found);
});

// The plate over the battery reaches to x -34 and lies 0.45 off at worst; a slope of 4 degrees takes 0.1 mm in 1.43.
test.each([
  [-33.2, []],
  [-32.5, ['cover-hollow']],
])('a contour of the back that begins at x %s, under the edge of a plate', (x, found) => {
  const belly = `contours: { belly: { face: back, kind: plane, from: { x: ${x}, y: 66 }, to: { x: ${x}, y: -20 }, slope: 4 deg, cutter: ball-20 } }`;
  const told = inSample(['tarn', 'crown: { from: 95 } }\n', `crown: { from: 95 } }\n${belly}\n`]);
  expect(idsOf(told).filter((id) => id.startsWith('cover'))).toEqual(found);
});

test('on the arch of the top a flat plate lies hollow: said at the plate', () => {
  const guard = '\n  guard: { face: top, shape: { kind: circle, diameter: 20 }, at: { x: 100, y: 0 } }';
  expect(saidBy('cover-hollow', inSample(more(guard)))[0]).toMatch(
    /^Under the cover guard there is a gap of .* at worst/,
  );
});

// At worst the plate's corner lies 5.2 from the edge. A round r takes a tenth √(0.2 r) inside its line: 5.09 and 5.36 from the edge.
test.each([
  [6.2, []],
  [6.5, ['cover-hollow']],
])('a round of %s under the corner of the neck plate', (round, found) => {
  expect(
    idsOf(
      // Nobody says what the cutter makes: that it is 6 would be a second mistake.
      inDemo(
        'ness',
        ['ness', 'back: { round: 6, cutter: round-6 }', `back: { round: ${round}, cutter: round-6 }`],
        ['plant/cutters', '    makes: { round: 6 }\n', ''],
      ),
    ),
  ).toEqual(found);
});
