/** The example of a check, as it is held: the text that fails has the finding at its line, and no error beside it. */
import { expect } from 'vitest';
import { compileAll } from '../../src/compile.ts';
import type { Example, Finding, Kind } from '../../src/findings/finding.ts';
import { positionOf } from '../../src/findings/render.ts';
import { memoryHost } from '../../src/host/memory.ts';
import { morePictures } from '../cases/pictures.ts';
import { edited } from '../cases/workspace.ts';

/** Without the left hand, blanks in its place: it takes as long as the right one and mostly says the same. */
const rightOnly = (files: Record<string, string>): Record<string, string> => ({
  ...files,
  'models/tarn.yaml': files['models/tarn.yaml']!.replace(/^handed:\n(?: .*\n)+/m, (block) =>
    block.replace(/[^\n]/g, ' '),
  ),
});

function findingsOf(files: Record<string, string>): Finding[] {
  const { checked } = compileAll(memoryHost({ ...morePictures(), ...files }), '2026-11-25');
  return [...checked.findings, ...checked.models.flatMap((model) => model.findings)];
}

const whole = (finding: Finding): readonly Finding[] => [finding, ...(finding.follows ?? []).flatMap(whole)];

export function holdExample(check: Kind, example: Example): void {
  const { id } = check;
  const { file, passes, fails, beside, also = [] } = example;
  const more = beside ? [beside] : [];
  for (const text of [check.why, check.mend]) expect(text).toMatch(/^[A-Z].*\.$/s);
  // The text that passes stands in the sample, which has no finding (tests/cases).
  const files = edited([...more, { file, find: passes, replace: fails }]);
  if (beside) expect(findingsOf(edited(more))).toEqual([]);
  const ofRight = findingsOf(rightOnly(files));
  // What is wrong with the left hand alone, or between the two, shows with both.
  const found = ofRight.flatMap(whole).some((finding) => finding.id === id) ? ofRight : findingsOf(files);
  // A caution may hang under another that it follows from.
  const mine = found.flatMap(whole).filter((finding) => finding.id === id);
  expect(mine, found.map((finding) => `${finding.id}: ${finding.what}`).join('\n')).not.toEqual([]);
  expect(mine[0]!.severity).toBe(check.severity);
  const others = found.filter(
    (finding) => finding.id !== id && finding.severity === 'error' && !also.includes(finding.id),
  );
  expect(others.map((finding) => `${finding.id}: ${finding.what}`)).toEqual([]);
  // It stands where the text was changed, or shows that place in its notes.
  const text = files[file]!;
  const start = edited(more)[file]!.indexOf(passes);
  const lines = [positionOf(text, start).line, positionOf(text, start + Math.max(fails.length, 1)).line];
  const places = mine.flatMap((finding) => [finding.place, ...finding.notes.map(({ place }) => place)]);
  const at = places.filter((place) => place.file === file).map((place) => positionOf(text, place.start).line);
  if (fails !== '')
    expect(
      at.some((line) => line >= lines[0]! && line <= lines[1]!),
      `${at.join()} in ${lines.join()}`,
    ).toBe(true);
}
