import { describe, test } from 'vitest';
import { BASE, changed, PLANT, rightHand, sampled, TARN } from './asked.ts';
import type { Files } from './asked.ts';
import * as as from './rewriting.ts';
import { sameAs } from './same.ts';

/** Files of which some were written anew by string edits. */
const inFile =
  (path: string, write: (text: string) => string) =>
  (files: Files): Files => ({
    ...files,
    [path]: write(files[path]!),
  });

/** The outline's path with another text between its letters and numbers. */
const path = (write: (parts: string[]) => string) =>
  inFile(TARN, (text) =>
    text.replace(/^( {2}path: )(.*)$/m, (_, key: string, line: string) => key + write(line.split(' '))),
  );

const isLetter = (part: string): boolean => /^[A-Z]$/.test(part);

const inTwo = (moved: readonly string[], into: string, text: string): Files => {
  const two = as.cutInTwo(text, moved);
  return { [into]: two.moved, kept: two.kept };
};

const rewrites: Record<string, (files: Files) => Files> = {
  'comments taken away': (files) => as.everySpec(files, as.withoutComments),
  'comments put in, above and beside': (files) =>
    as.everySpec(files, (text) =>
      text.replaceAll(/^(?=[a-z].*:)/gm, '# looked over: 16.40 ±0.10\n\n').replace(/^units: mm$/m, '$& # not inches'),
    ),
  'the keys of every map in the other order': (files) => as.everySpec(files, as.reversed),
  'all in braces': (files) => as.everySpec(files, (text) => as.inStyle(text, true)),
  'all in lines': (files) => as.everySpec(files, (text) => as.inStyle(text, false)),
  'texts in quotes': (files) => as.everySpec(files, as.quoted),
  'half of the model in a base of its own, on the base it had': (files) => {
    const { kept, ...base } = inTwo(
      ['timber', 'stages', 'carve', 'based-on', 'cavities', 'neck', 'bridge'],
      'models/base/arched.yaml',
      files[TARN]!,
    );
    return { ...files, ...base, [TARN]: `${kept}\nbased-on: base/arched\n` };
  },
  'the base in two, one on the other': (files) => {
    const { kept, ...base } = inTwo(['neck', 'holes'], 'models/base/heel.yaml', files[BASE]!);
    return { ...files, ...base, [BASE]: `${kept}\nbased-on: base/heel\n` };
  },
  'the base written into the model': ({ [BASE]: base, ...files }) => {
    const { 'based-on': _, ...own } = as.dataOf(files[TARN]!);
    return { ...files, [TARN]: as.written(as.laidOver(own, as.dataOf(base!))) };
  },
  'an anchor in place of what is said twice': inFile(TARN, (text) => {
    const first = changed(
      text,
      'shape: { kind: rectangle, length: 38, width: 88 }',
      'shape: &pickup { kind: rectangle, length: 38, width: 88 }',
    );
    return changed(first, 'shape: { kind: rectangle, length: 38, width: 88 }', 'shape: *pickup');
  }),
  'the plant in three files, a table over two of them': ({ [PLANT]: plant, ...files }) => {
    const { kept, ...stations } = inTwo(
      ['route', 'stations', 'machines', 'jigs', 'fixtures'],
      'models/plant/floor.yaml',
      plant!,
    );
    const at = kept!.indexOf('  d-11:\n');
    const end = kept!.indexOf('gauges:\n');
    const drills = `units: mm\ncutters:\n${kept!.slice(at, end)}`;
    return {
      ...files,
      ...stations,
      'models/plant/drills.yaml': drills,
      [PLANT]: kept!.slice(0, at) + kept!.slice(end),
    };
  },
  'the outline with commas': path((parts) =>
    parts
      .map((part, i) => (i > 0 && !isLetter(part) && !isLetter(parts[i - 1]!) ? `,${part}` : ` ${part}`))
      .join('')
      .trim(),
  ),
  'the outline without a blank that can be spared': path((parts) =>
    parts
      .join(' ')
      .replaceAll(/ ?([A-Z]) ?/g, '$1')
      .replaceAll(' -', '-'),
  ),
  'the outline over many lines': path(
    (parts) =>
      `>-\n    ${parts
        .map((part) => (isLetter(part) ? `\n    ${part}` : `  ${part}`))
        .join('')
        .trim()}`,
  ),
  'finishes and grades in another order': (files) =>
    as.everySpec(files, (text) => as.listsReversed(text, ['finishes', 'figure'])),
  'what is cut into in another order': inFile(TARN, (text) => as.listsReversed(text, ['into'])),
  'lines that end as on Windows': (files) => as.everySpec(files, (text) => text.replaceAll('\n', '\r\n')),
  'a mark where the document starts': (files) => as.everySpec(files, (text) => `---\n${text}`),
};

describe('another order, layout or file is no change', () => {
  const files = rightHand();
  test.each(sampled(Object.keys(rewrites)))('%s', async (name) => sameAs(files, rewrites[name]!(files)));
});
