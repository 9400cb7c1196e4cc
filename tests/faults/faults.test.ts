/**
 * One fault at a time, planted in sound models: each that must be noticed is, at its line, with one top finding.
 *
 *   FAULTS_ALL=1        all of them in the sample, and more in the demo models; without it a seeded sample
 *   FAULTS_PART=3/8     with FAULTS_ALL: the third eighth of them, for hours that are split
 *   FAULTS=text         only faults whose id has this in it, out of all
 *   FAULTS_SHOW=1       prints what came of each that falls short, in full
 *   FAULTS_UPDATE=1     takes off known-gaps.ts what is mended or gone; what is new is put on by hand, with a reason
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { faultsOf, sampled } from './generator.ts';
import type { Fault } from './fault.ts';
import { judged, shortcoming, verdictText } from './judge.ts';
import { knownGaps } from './known-gaps.ts';
import { seedOf } from './seeded.ts';
import type { Sound } from './sound.ts';
import { soundDemos, soundSample } from './sound.ts';
import { tables } from './table.ts';
import { unsound } from './trade.ts';

const { FAULTS_ALL: all, FAULTS_PART: part, FAULTS: only, FAULTS_SHOW: show, FAULTS_UPDATE: update } = process.env;

function chosen(sound: Sound, faults: readonly Fault[], few: number, many: number): Fault[] {
  if (only !== undefined) return faults.filter(({ id }) => id.includes(only));
  const [nth = 1, of = 1] = (part ?? '1/1').split('/').map(Number);
  return sampled(faults, all ? many : few, seedOf(sound.name)).filter((_, i) => i % of === nth - 1);
}

function takeOff(ids: readonly string[]): void {
  const file = join(import.meta.dirname, 'known-gaps.ts');
  const without = (line: string): string =>
    ids.reduce((text, id) => text.replace(`'${id}',`, '').replace(`'${id}'`, '').replace(`"${id}",`, ''), line);
  const lines = readFileSync(file, 'utf8').split('\n');
  const kept = lines
    .map((line) => [line, without(line)] as const)
    .filter(([line, left]) => line === left || left.trim() !== '');
  writeFileSync(file, kept.map(([, left]) => left).join('\n'));
}

test('every fault that must be noticed is, at its line, with one top finding', { timeout: 3_600_000 }, () => {
  const sample = soundSample();
  const plan = [
    { sound: sample, faults: chosen(sample, faultsOf(sample), 24, Infinity) },
    ...soundDemos().map((sound) => ({ sound, faults: chosen(sound, faultsOf(sound, 'model'), 2, 40) })),
  ];
  const verdicts = plan.flatMap(({ sound, faults }) =>
    faults.map((fault, i) => {
      // So that who waits for hours sees how far it is.
      if (all && i % 200 === 0) console.log(`${sound.name}: ${i} of ${faults.length}`);
      return judged(sound, fault);
    }),
  );
  console.log(tables(verdicts));
  const short = verdicts.filter((verdict) => shortcoming(verdict) !== undefined);
  if (show) console.log(short.map(verdictText).join('\n\n'));

  const known = new Set(knownGaps.flatMap(({ ids }) => ids));
  const plantedIds = new Set(verdicts.map(({ fault }) => fault.id));
  const shortIds = new Set(short.map(({ fault }) => fault.id));
  expect(plantedIds.size).toBe(verdicts.length);
  expect(plantedIds.size).toBeGreaterThan(only !== undefined ? 0 : all ? 300 : 35);
  const gaps = {
    'new gaps': short.filter(({ fault }) => !known.has(fault.id)).map((one) => `${one.fault.id}: ${shortcoming(one)}`),
    'mended: take them off known-gaps.ts': [...known].filter((id) => plantedIds.has(id) && !shortIds.has(id)),
    'no such fault any more':
      all && only === undefined && part === undefined ? [...known].filter((id) => !plantedIds.has(id)) : [],
  };
  if (update) takeOff([...gaps['mended: take them off known-gaps.ts'], ...gaps['no such fault any more']]);
  expect(gaps).toEqual({ 'new gaps': [], 'mended: take them off known-gaps.ts': [], 'no such fault any more': [] });
});

test('the models faults are planted in are sound by our own arithmetic too', () => {
  for (const { name, files, layers } of [soundSample(), ...soundDemos()])
    expect(unsound(files, layers), name).toEqual([]);
});

test('faults are planted at the line they name, and change nothing else', () => {
  const sample = soundSample();
  for (const fault of faultsOf(sample)) {
    const marked = fault.marks.map(({ file }) => file);
    for (const { file, from, to, text } of fault.splices) {
      const before = sample.files[file] ?? '';
      expect(marked, fault.id).toContain(file);
      expect(from, fault.id).toBeLessThanOrEqual(to);
      expect(to, fault.id).toBeLessThanOrEqual(before.length);
      expect(before.slice(from, to), fault.id).not.toBe(text);
    }
  }
});
