/**
 * Sound models written or moved in other ways, and still sound: no finding, and the same cards where they mean the same.
 *
 *   FAULTS_ALL=1            five hundred of each model; without it a few
 *   VARIANTS=tarn,sample    of these models alone
 */
import { expect, test } from 'vitest';
import { findingText } from '../../src/findings/render.ts';
import { outcomeOf } from './judge.ts';
import { soundDemos, soundSample } from './sound.ts';
import { variantsOf, WAYS } from './variants.ts';

const { FAULTS_ALL: all, VARIANTS: only } = process.env;

const EACH = all ? 500 : 2;
const sounds = [soundSample(), ...soundDemos()].filter(({ name }) => only?.split(',').includes(name) ?? true);
const used = new Set<string>();

test.each(sounds)(
  '$name: its variants have no finding, and the same cards where they mean the same',
  (sound) => {
    const before = new Set(outcomeOf(sound.files).codes);
    const times = new Map<string, number>();
    let same = 0;
    const wrong: string[] = [];
    for (const variant of variantsOf(sound, EACH)) {
      for (const way of variant.ways) times.set(way, (times.get(way) ?? 0) + 1);
      const { errors, cautions, codes: now } = outcomeOf(variant.files);
      const found = [...errors, ...cautions].map(findingText);
      if (found.length > 0) wrong.push(`${variant.id}\n${found.join('\n')}`);
      if (found.length > 0 || !variant.same) continue;
      same += 1;
      const changed = now.filter((code) => !before.has(code));
      if (changed.length > 0 || now.length === 0) wrong.push(`${variant.id}: other cards: ${changed.join(', ')}`);
    }
    for (const way of times.keys()) used.add(way);
    if (all)
      console.log(
        [
          `${sound.name}: ${EACH} sound variants, ${wrong.length} not as they should be; ${same} had to have the same cards`,
          ...[...times].map(([way, count]) => `  ${String(count).padStart(4)}  ${way}`),
        ].join('\n'),
      );
    expect(wrong).toEqual([]);
  },
  3_600_000,
);

test('every way of writing it was used', () => {
  // The rarest has room in one model only: few variants may miss it.
  const enough = all !== undefined && only === undefined ? WAYS.length : 2;
  expect(used.size).toBeGreaterThanOrEqual(enough);
});
