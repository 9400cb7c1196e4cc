/**
 * Cases: the sample workspace with one thing wrong in each, and the findings that must come of it. A case is a folder of
 * cases/ with `edits.yaml` (see Edit in cases/workspace.ts; `remove: file` takes one out) and `expected.txt`, a line
 * `file:line:col id` a finding.
 *
 *   CASES=name          only the cases whose folder has this in its name
 *   CASES_SHOW=1        prints every finding in full, as people read it
 *   CASES_UPDATE=1      writes expected.txt anew: look at the difference before you keep it
 */
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { compileAll } from '../src/compile.ts';
import { findingText, renderFinding } from '../src/findings/render.ts';
import { memoryHost } from '../src/host/memory.ts';
import { caseNames, everyFinding, filesOf, holdCase } from './cases/case.ts';
import { sample } from './cases/workspace.ts';

describe('cases', () => {
  test.each(caseNames)('%s', holdCase);
});

test('the sample is sound, and has a card for every station and hand', () => {
  const compiled = compileAll(memoryHost(sample()));
  expect(
    everyFinding(compiled).map((one) => findingText(renderFinding(one, compiled.checked.workspace.texts))),
  ).toEqual([]);
  const [model] = compiled.models;
  const stations = (hand: string) =>
    model!.cards.filter(({ card }) => card.key.hand === hand).map(({ card }) => card.key.station);
  const route = (parse(sample()['models/plant/plant.yaml']!) as { route: string[] }).route;
  expect(route).toHaveLength(13);
  expect(stations('right')).toEqual([...route, 'set-aside']);
  expect(stations('left')).toEqual([...route, 'set-aside']);
});

/** A case as people get it. */
function rendered(files: Record<string, string | Uint8Array>) {
  const compiled = compileAll(memoryHost(files));
  return everyFinding(compiled).map((one) => renderFinding(one, compiled.checked.workspace.texts));
}

test('the other line of a conflict is in its notes', () => {
  const [finding] = rendered(filesOf('machined-lowered'));
  expect(finding!.notes[0]!.where).toBe('models/tarn.yaml:20:24');
  expect(finding!.what).toContain(
    'comes in at 49.28 mm, and at its thickest it is to go out at 49.35 mm: it is 0.07 mm too thin already',
  );
});

test('a floor that is not held says what goes into it', () => {
  const finding = rendered(filesOf('faces-removed'))
    .flatMap((one) => [one, ...one.follows])
    .find(({ line }) => line === 72)!;
  for (const part of ['±0.40 mm', '±0.12 mm', '±0.10 mm', '±0.08 mm', '±0.03 mm', '±0.43 mm'])
    expect(finding.what).toContain(part);
  // The crown has no part in it.
  expect(finding.notes).toHaveLength(5);
});

test('a model with an error has no card, another beside it has all of its own', () => {
  const compiled = compileAll(memoryHost(filesOf('one-of-two-models')));
  const cards = Object.fromEntries(compiled.models.map(({ id, cards: made }) => [id, made.length]));
  expect(cards).toEqual({ tarn: 28, tern: 0 });
  for (const sheet of compiled.sheets) expect(sheet.rows.map(({ key }) => key.model)).toEqual(['tarn', 'tarn']);
});

test('a file that is not UTF-8 is refused where it stands; the rest of it is not guessed at', () => {
  const text = sample()['models/tarn.yaml']!;
  const latin = Uint8Array.from(text.replaceAll('±', '\u00b1'), (letter) => letter.charCodeAt(0));
  const [finding, ...others] = rendered({ ...sample(), 'models/tarn.yaml': latin });
  expect(`${finding!.where} ${finding!.id}`).toBe('models/tarn.yaml:1:1 file-unreadable');
  expect(others).toEqual([]);
});

test('a plant file that cannot be read is said once, and no name is missed that may stand in it', () => {
  const broken = rendered({ ...sample(), 'models/plant/more.yaml': 'cutters: [' });
  expect(broken.map((one) => `${one.file} ${one.id}`)).toEqual(['models/plant/more.yaml file-unreadable']);
});
