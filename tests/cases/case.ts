/** A case as it is held: its files, what is found in them, and what is expected of that. */
import { existsSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect } from 'vitest';
import { parse } from 'yaml';
import type { Compiled } from '../../src/compile.ts';
import { compileAll } from '../../src/compile.ts';
import type { Finding } from '../../src/findings/finding.ts';
import { findingText, inOrder, renderFinding } from '../../src/findings/render.ts';
import { unique } from '../../src/findings/unique.ts';
import { memoryHost } from '../../src/host/memory.ts';
import { morePictures } from './pictures.ts';
import type { Edit } from './workspace.ts';
import { edited } from './workspace.ts';

const folder = import.meta.dirname;
const { CASES: only = '', CASES_SHOW: show, CASES_UPDATE: update } = process.env;

export const caseNames = readdirSync(folder, { withFileTypes: true })
  .filter((entry) => entry.isDirectory() && entry.name !== 'sample' && entry.name.includes(only))
  .map((entry) => entry.name);

export const everyFinding = ({ checked, models }: Compiled): Finding[] =>
  inOrder(unique([...checked.findings, ...models.flatMap((model) => model.findings)]));

export function filesOf(name: string): Record<string, string> {
  const list = parse(readFileSync(join(folder, name, 'edits.yaml'), 'utf8')) as (Edit | { remove: string })[];
  const files = edited(list.filter((edit): edit is Edit => !('remove' in edit)));
  for (const edit of list) if ('remove' in edit) delete files[edit.remove];
  return files;
}

/** Its findings are those expected, no more and no fewer, each in whole sentences. */
export function holdCase(name: string): void {
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
}
