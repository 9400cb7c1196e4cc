/** A wire's way in from the edge: open, closed by a jack, plugged, or through the mouth of a pocket. */
import { expect, test } from 'vitest';
import { compileAll } from '../../src/compile.ts';
import { memoryHost } from '../../src/host/memory.ts';
import { edited } from '../cases/workspace.ts';
import type { Change } from './told.ts';
import { idsOf, inSample, saidBy } from './told.ts';

const bore = (words: string): string =>
  `setup: top, end: { x: 100, y: -100 }, from: cap-face, drill: d-6-long, into: [controls], ${words}`;
const wire = (words: string, more = ''): Change => [
  'tarn',
  'channels:\n',
  `channels:\n  side: { ${bore(`start: { x: 160, y: -100 }, depth: 25 ±1.0, diameter: 6, use: wire${words}`)} }\n${more}`,
];
const ids = (change: Change): string[] => idsOf(inSample(change));

test('open: an error with the place, where the edge is cut', () => {
  expect(saidBy('wire-hole-in-side', inSample(wire('')))[0]).toMatch(
    /6\.00 mm wide in the side.* at x 150\.0, y -100\.0 mm/,
  );
});

test('said to be plugged: let be, and the card says so', () => {
  const change = wire(', mouth: plugged');
  expect(ids(change)).toEqual([]);
  const [name, find, replace] = change;
  const { models } = compileAll(memoryHost(edited([{ file: `models/${name}.yaml`, find, replace }])));
  const says = models[0]!.cards.filter(({ card }) => JSON.stringify(card.steps).includes('machining.step.plug'));
  expect([...new Set(says.map(({ card }) => card.station.text))]).toEqual(['Machining, top']);
});

test('plugged, and nothing to plug', () => {
  expect(ids(['tarn', 'start: { x: 24, y: 43 }\n', 'mouth: plugged\n    start: { x: 24, y: 43 }\n'])).toEqual([
    'wire-hole-in-side',
  ]);
});

// A jack's bore of 20 leaves 10 about its middle; the wire needs 3 of that.
test.each([
  ['-100.0', false],
  ['-106.9', false],
  ['-107.1', true],
])('a jack bored in beside it, at y %s', (y, open) => {
  const words = `setup: top, start: { x: 160, y: ${y} }, end: { x: 100, y: ${y} }, diameter: 20, from: cap-face`;
  const jack = `  jack: { ${words}, depth: 25 ±1.0, drill: d-20, use: jack, into: [controls, side] }\n`;
  const found = inSample(wire('', jack), [
    'plant/plant',
    '  d-6-long:\n',
    '  d-20: { title: Long drill 20, kind: drill, diameter: 20, reach: 80 }\n  d-6-long:\n',
  ]);
  expect(idsOf(found)).toEqual(open ? ['wire-hole-in-side'] : []);
});

// Started outside, over the mouth of the neck pocket: its axis lies 11 deep, less than the pocket.
test.each([
  ['{ x: 0, y: 240 }', []],
  ['{ x: 0, y: 165 }', []],
])('through the mouth of the neck pocket: %s', (start, found) => {
  expect(ids(['tarn', 'start: { x: 0, y: 165 }', `start: ${start}`])).toEqual(found);
});
