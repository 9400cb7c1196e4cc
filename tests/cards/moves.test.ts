/** One number of the plant changed: the cards that carry what follows from it change, and no other. */
import { expect, test } from 'vitest';
import { compileAll } from '../../src/compile.ts';
import type { MadeCard } from '../../src/cards/card.ts';
import { memoryHost } from '../../src/host/memory.ts';
import { demoFiles } from './demo.ts';

const text = (bytes: Uint8Array): string => Buffer.from(bytes).toString('utf8');

/** The tarn alone: its right-hand cards by station, with one text of a file put in place of another. */
function cardsWith(file?: string, find = '', replace = ''): ReadonlyMap<string, MadeCard> {
  const all = Object.entries(demoFiles()).filter(([path]) => path.split('/').length > 2 || path === 'models/tarn.yaml');
  const files = Object.fromEntries(all.map(([path, bytes]) => [path, text(bytes)]));
  if (file !== undefined) {
    const parts = files[file]!.split(find);
    expect(parts, `${file}: ${find}`).toHaveLength(2);
    files[file] = parts.join(replace);
  }
  const [model] = compileAll(memoryHost(files), '2026-11-25').models;
  expect(model!.findings.map(({ what }) => what)).toEqual([]);
  return new Map(
    model!.cards.filter(({ card }) => card.key.hand === 'right').map((one) => [one.card.key.station, one]),
  );
}

const before = cardsWith();

/** Stations whose card is another one. */
const changed = (after: ReadonlyMap<string, MadeCard>): string[] =>
  [...before.keys()].filter((station) => before.get(station)!.code !== after.get(station)?.code);

test('the humidity of the store moves the card of the store alone', () => {
  const after = cardsWith('models/plant/machines.yaml', 'humidity: 45 ±3 %', 'humidity: 47 ±3 %');
  expect(changed(after)).toEqual(['conditioning']);
});

test('the bore of the side clamps moves their air, on the card of the edge gluer alone', () => {
  const after = cardsWith('models/plant/machines.yaml', 'clamp-bore: 100', 'clamp-bore: 90');
  expect(changed(after)).toEqual(['edge-gluing']);
});

test('the bore of the rams moves the gauge, on the card of the press alone', () => {
  const after = cardsWith(
    'models/plant/machines.yaml',
    'bore: 100\n    gauge-full-scale',
    'bore: 98\n    gauge-full-scale',
  );
  expect(changed(after)).toEqual(['press']);
  const numbers = (cards: ReadonlyMap<string, MadeCard>) =>
    cards.get('press')!.card.keyNumbers.map(({ value }) => value.kind === 'limits' && value.fact);
  expect(numbers(after)).toEqual(numbers(before));
});

test('another species moves movement, mass and dust, and not one thickness', () => {
  const after = cardsWith(
    'models/tarn.yaml',
    'back: { species: red-alder, pieces: 2, sawn: flat, stock: alder-6-4 }',
    'back: { species: yellow-poplar, pieces: 2, sawn: flat, stock: poplar-6-4 }',
  );
  const sizes = (cards: ReadonlyMap<string, MadeCard>, station: string) => cards.get(station)!.card.keyNumbers;
  expect(changed(after)).toEqual(
    expect.arrayContaining(['conditioning', 'picking', 'planing', 'rough-sawing', 'sizing', 'sign-off']),
  );
  for (const station of ['planing', 'sizing']) expect(sizes(after, station)).toEqual(sizes(before, station));
});

test('what the wood may drift by moves the limits of the blank', () => {
  const rested = 'common practice, no source.\n    joint-movement: 1.2\n    seam-off: 0.5\n    drift: 0 ±';
  const after = cardsWith('models/plant/lines.yaml', `${rested}0.3 %`, `${rested}0.4 %`);
  expect(changed(after)).toContain('press');
  expect(changed(after)).not.toContain('sizing');
});
