/**
 * Cases: the sample workspace with one thing wrong in each, and the findings that must come of it. A case is a folder of
 * cases/ with `edits.yaml` (see Edit in cases/workspace.ts; `remove: file` takes one out) and `expected.txt`, a line
 * `file:line:col id` a finding.
 *
 *   CASES=name          only the cases whose folder has this in its name
 *   CASES_SHOW=1        prints every finding in full, as people read it
 *   CASES_UPDATE=1      writes expected.txt anew: look at the difference before you keep it
 */
import { existsSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import type { Compiled } from '../src/compile.ts';
import { compileAll } from '../src/compile.ts';
import type { Finding } from '../src/findings/finding.ts';
import { findingText, inOrder, renderFinding } from '../src/findings/render.ts';
import { memoryHost } from '../src/host/memory.ts';
import { unique } from '../src/findings/unique.ts';
import { morePictures } from './cases/pictures.ts';
import type { Edit } from './cases/workspace.ts';
import { edited, sample } from './cases/workspace.ts';

const folder = join(import.meta.dirname, 'cases');
const { CASES: only = '', CASES_SHOW: show, CASES_UPDATE: update } = process.env;

const names = readdirSync(folder, { withFileTypes: true })
  .filter((entry) => entry.isDirectory() && entry.name !== 'sample' && entry.name.includes(only))
  .map((entry) => entry.name);

const everyFinding = ({ checked, models }: Compiled): Finding[] =>
  inOrder(unique([...checked.findings, ...models.flatMap((model) => model.findings)]));

function filesOf(name: string): Record<string, string> {
  const list = parse(readFileSync(join(folder, name, 'edits.yaml'), 'utf8')) as (Edit | { remove: string })[];
  const files = edited(list.filter((edit): edit is Edit => !('remove' in edit)));
  for (const edit of list) if ('remove' in edit) delete files[edit.remove];
  return files;
}

describe('cases', () => {
  test.each(names)('%s', (name) => {
    const compiled = compileAll(memoryHost({ ...morePictures(), ...filesOf(name) }));
    const findings = everyFinding(compiled).map((one) => renderFinding(one, compiled.checked.workspace.texts));
    if (show) console.log(findings.map(findingText).join('\n\n'));
    // What follows from a finding stands under it, two blanks in.
    const found = findings
      .flatMap((one) => [one, ...one.follows].map((each) => `${each === one ? '' : '  '}${each.where} ${each.id}\n`))
      .join('');
    const expected = join(folder, name, 'expected.txt');
    if (update) writeFileSync(expected, found);
    expect(found).toBe(existsSync(expected) ? readFileSync(expected, 'utf8') : undefined);
    expect(found).not.toBe('');
    for (const one of findings) for (const text of [one.what, one.why, one.mend]) expect(text).toMatch(/^\S.*[.?]$/s);
  });
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
  expect(finding!.what).toContain('49.28 mm at the thinnest before − 49.35 mm at the thickest after');
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
