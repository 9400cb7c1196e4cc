/** What is found at the top after a change, in the sample or in a demo model alone: what follows from it hangs below. */
import { compileAll } from '../../src/compile.ts';
import type { Finding } from '../../src/findings/finding.ts';
import { memoryHost } from '../../src/host/memory.ts';
import { sample } from '../cases/workspace.ts';
import { demoFiles } from '../cards/demo.ts';

/** Text found exactly once in a file below models/, and what takes its place. */
export type Change = readonly [file: string, find: string, replace: string];

type Files = Record<string, string | Uint8Array>;

export const inSample = (...changes: readonly Change[]): Finding[] => told({ ...sample() }, changes);

/** Said of the left hand alone. */
export const ofLeft = (text: string): Change => ['tarn', 'handed:\n  left:\n', `handed:\n  left:\n    ${text}\n`];

export function inDemo(model: string, ...changes: readonly Change[]): Finding[] {
  const all = Object.entries(demoFiles()).filter(
    ([path]) => path.split('/').length > 2 || path === `models/${model}.yaml`,
  );
  return told(Object.fromEntries(all), changes);
}

function told(files: Files, changes: readonly Change[]): Finding[] {
  for (const [name, find, replace] of changes) {
    const file = `models/${name}.yaml`;
    const before = files[file] ?? '';
    const parts = (typeof before === 'string' ? before : new TextDecoder().decode(before)).split(find);
    if (parts.length !== 2) throw new Error(`${file}: found ${parts.length - 1} times: ${find}`);
    files[file] = parts.join(replace);
  }
  const { checked, models } = compileAll(memoryHost(files), '2026-11-25');
  return [...checked.findings, ...models.flatMap(({ findings }) => findings)];
}

/** With what hangs below. */
const whole = (finding: Finding): readonly Finding[] => [finding, ...(finding.follows ?? []).flatMap(whole)];

export const idsOf = (findings: readonly Finding[]): string[] => findings.map(({ id }) => id);

/** What of it one check says. */
export const saidBy = (id: string, findings: readonly Finding[]): string[] =>
  findings
    .flatMap(whole)
    .filter((one) => one.id === id)
    .map(({ what }) => what);
