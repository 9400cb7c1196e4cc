/** Sound variants of the sample and the demo models: each is written or moved in one to three ways. */
import { layersOf, modelOf, plantOf } from './merged.ts';
import type { Files } from './merged.ts';
import { seedOf, seeded } from './seeded.ts';
import type { Sound } from './sound.ts';
import { leftHand } from './variants/left.ts';
import { nudged, tightened } from './variants/moved.ts';
import {
  asDeviations,
  asRange,
  boardLength,
  modelLength,
  otherPressure,
  plusMinus,
  unitsWritten,
} from './variants/respelt.ts';
import type { Way } from './variants/variant.ts';
import { base, braces, comments, endings, listing, order } from './variants/written.ts';

export interface Variant {
  readonly id: string;
  readonly from: Sound;
  readonly files: Files;
  readonly ways: readonly string[];
  /** It means what the model meant that it was made from. */
  readonly same: boolean;
}

export const WAYS: readonly Way[] = [
  nudged,
  tightened,
  leftHand,
  unitsWritten,
  asRange,
  asDeviations,
  plusMinus,
  boardLength,
  modelLength,
  otherPressure,
  comments,
  endings,
  order,
  listing,
  braces,
  base,
];

/** The first `count` variants of a model; the same in every run. */
export function* variantsOf(from: Sound, count: number): Generator<Variant> {
  for (let number = 0; number < count; number++) yield variant(from, number);
}

function variant(from: Sound, number: number): Variant {
  const chance = seeded(seedOf(from.name) + number);
  const file = from.layers[0]!;
  // The first way goes round, so that each has its share; others are laid over it by chance.
  const first = WAYS[number % WAYS.length]!;
  const list = [first, ...chance.shuffle(WAYS).slice(0, chance.whole(3))];
  const done: Way[] = [];
  // Line endings last: nothing else here writes them.
  const ordered = WAYS.filter((way) => list.includes(way)).toSorted(
    (a, b) => Number(a === endings) - Number(b === endings),
  );
  const last = ordered.reduce((sound, way) => {
    const files = way.apply(sound, chance);
    if (files === undefined) return sound;
    done.push(way);
    const layers = layersOf(files, file);
    return { ...sound, files, layers, model: modelOf(files, layers), plant: plantOf(files) };
  }, from);
  const ways = done.map(({ name }) => name);
  const id = `${from.name} ${number}: ${ways.join(', ') || 'as it is'}`;
  return { id, from, files: last.files, ways, same: done.every(({ same }) => same) };
}
