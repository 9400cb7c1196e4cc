/**
 * Every fault that can be planted in a sound workspace, one change of text each. Written from the README, the published
 * schemas and the trade, by people who have not read the checks: nothing here may import them.
 */
import { entriesOf } from './entries.ts';
import type { Entry } from './entries.ts';
import type { Fault } from './fault.ts';
import { listFaults } from './kinds/lists.ts';
import { misspeltFaults } from './kinds/misspelt.ts';
import { modelFaults } from './kinds/model.ts';
import { numberFaults } from './kinds/numbers.ts';
import { rowFaults } from './kinds/plant-rows.ts';
import { removedFaults } from './kinds/removed.ts';
import { wordFaults } from './kinds/words.ts';
import { seedOf, seeded } from './seeded.ts';
import type { Sound } from './sound.ts';

const kinds = [removedFaults, misspeltFaults, wordFaults, numberFaults, listFaults, rowFaults, modelFaults];

/** In the same order every time. With `of`, of the model's own files only, or of the plant's. */
export function faultsOf(sound: Sound, of?: Entry['of']): Fault[] {
  const entries = entriesOf(sound);
  const faults = kinds.flatMap((kind) => kind(sound, entries));
  const wanted = faults.filter(
    ({ marks }) => of === undefined || marks[0]!.file.startsWith('models/plant/') === (of === 'plant'),
  );
  return [...new Map(wanted.map((fault) => [fault.id, fault])).values()];
}

/** Some of them, of every kind in turn until there are enough. */
export function sampled(faults: readonly Fault[], count: number, seed: number): Fault[] {
  const kinds = [...new Set(faults.map(({ kind }) => kind))];
  const mixed = kinds.map((kind) => seeded(seed ^ seedOf(kind)).shuffle(faults.filter((one) => one.kind === kind)));
  const rounds = Math.max(...mixed.map((list) => list.length));
  const turns = Array.from({ length: rounds }, (_, round) => mixed.flatMap((list) => list.slice(round, round + 1)));
  return turns.flat().slice(0, count);
}
