/** What is cut into the faces and along the edge: the cap is left, contours take wood off, ledges and rounds leave some. */
import { expect, test } from 'vitest';
import type { Change } from './told.ts';
import { idsOf, inDemo, inSample, saidBy } from './told.ts';

const says = (id: string, found: ReturnType<typeof inDemo>): boolean => idsOf(found).includes(id);

/** The land of Carr's bevel, machined; sanding takes 0.4 more. */
const land = (machined: number, more = ''): readonly Change[] => [
  [
    'carr',
    'land: 37.60 ±0.12 }\n    white: { face: 41.10 ±0.15, land: 37.20 ±0.15 }',
    `land: ${machined} ±0.12 }\n    white: { face: 41.10 ±0.15, land: ${(machined - 0.4).toFixed(2)} ±0.15 }`,
  ],
  ['carr', 'bevel: { width: 16 } }', `bevel: { width: 16 }${more} }`],
];

// The glue face lies at 34.05 in the finished body; white land, back and cap are 0.39 off together.
test.each([
  [34.9, false],
  [34.8, true],
])('a bevel down to a land of %s, over a glue line at 34.05', (machined, shows) => {
  expect(says('back-shows-through-cap', inDemo('carr', ...land(machined)))).toBe(shows);
});

test('through the cap, and meant: let be; meant, and not through: said at that', () => {
  expect(says('back-shows-through-cap', inDemo('carr', ...land(32.6, ', cap: through')))).toBe(false);
  expect(saidBy('back-shows-through-cap', inDemo('carr', ...land(37.6, ', cap: through')))[0]).toMatch(
    /^The carve is said to come through the cap, and leaves 3\.15 mm of it/,
  );
});

test('a slab has no cap to come through', () => {
  const found = inDemo('skerry', ['skerry', 'carve: { kind: flat }', 'carve: { kind: flat, cap: through }']);
  expect(saidBy('back-shows-through-cap', found)[0]).toMatch(/made of one slab/);
});

/** A slope over Voe's arm; tan 30° takes 0.577 mm for each mm. The white cap and what puts it off pass at 0.46, and not at 0.35. */
const arm = (x: number, words = ''): Change => [
  'voe',
  'carve: { kind: flat }\n',
  `carve: { kind: flat }\ncontours: { arm: { face: top, kind: plane, from: { x: ${x}, y: -40 }, to: { x: ${x}, y: -100 }, slope: 30 deg, cutter: ball-20${words} } }\n`,
];

test.each([
  [-163.4, '', false],
  [-163.2, '', true],
  [-163.2, ', cap: through', false],
  [-163.4, ', cap: through', true],
])('a contour from x %s through a cap of 8%s', (x, words, told) => {
  expect(says('back-shows-through-cap', inDemo('voe', arm(x, words)))).toBe(told);
});

// The edge of the sample is straight at x −150; a slope of 12 degrees takes 0.5 mm in 2.35.
test.each([
  [-147.6, []],
  [-147.7, ['contour-takes-nothing']],
  [-160, ['contour-takes-nothing']],
])('a contour of the back that begins at x %s', (x, found) => {
  const side = `contours: { arm: { face: back, kind: plane, from: { x: ${x}, y: -60 }, to: { x: ${x}, y: -140 }, slope: 12 deg, cutter: ball-20 } }`;
  expect(idsOf(inSample(['tarn', 'crown: { from: 95 } }\n', `crown: { from: 95 } }\n${side}\n`]))).toEqual(found);
});

test('a contour that the carve has cut deeper already takes nothing either', () => {
  const rim =
    'contours: { rim: { face: top, kind: dished, from: { x: -142, y: -60 }, to: { x: -142, y: -140 }, width: 20, depth: 2, cutter: ball-20 } }';
  const found = inSample(['tarn', 'crown: { from: 95 } }\n', `crown: { from: 95 } }\n${rim}\n`]);
  expect(saidBy('contour-takes-nothing', found)[0]).toMatch(/^Contour rim takes nothing off: /);
});

const ledge = (model: string, after: string, width: number, depth: string): Change => [
  model,
  after,
  `${after}edges: { top: { ledge: { width: ${width}, depth: ${depth} }, cutter: mill-16-long } }\n`,
];

// Carr's land stands 37.60 ±0.12 high, and its line wants 3.
test.each([
  ['34.4', []],
  ['34.5', ['ledge-too-deep']],
  ['34.4 ±0.1', ['ledge-too-deep']],
])('a ledge %s deep', (depth, found) => {
  expect(idsOf(inDemo('carr', ledge('carr', 'bevel: { width: 16 } }\n', 2, depth)))).toEqual(found);
});

test('a ledge on a flat body of a size that binding has: nothing to say', () => {
  for (const [width, depth] of [
    [2, '6'],
    [6, '12'],
  ] as const)
    expect(idsOf(inDemo('voe', ledge('voe', 'carve: { kind: flat }\n', width, depth)))).toEqual([]);
});

test('a ledge into a chamber: the finding shows its line, and counts its step once', () => {
  const [one] = inDemo('voe', ledge('voe', 'carve: { kind: flat }\n', 20, '12'));
  expect(one?.notes.map(({ text }) => text)).toContain('the ledge of the top');
  expect(one?.what).toMatch(
    /They overlap by 2\.55 mm as drawn, and that may be off by ±0\.12 mm \(machined body\) .*: they overlap by 2\.92 mm at worst/,
  );
});

const rounds = (radius: number): Change => [
  'brae',
  'carve: { kind: flat }\n',
  `carve: { kind: flat }\nedges: { top: { round: ${radius}, cutter: bevel-50 }, back: { round: ${radius}, cutter: bevel-50 } }\n`,
];

// The edge is 43.90 ±0.12 high.
test.each([
  [21.89, false],
  [21.9, true],
])('two rounds of %s', (radius, meet) => {
  expect(says('rounds-meet', inDemo('brae', rounds(radius)))).toBe(meet);
});
