/** `platen` over workspaces in memory: the one it runs in, and folders beside it by the name a user gives them. */
import { run } from '../../src/cli/run.ts';
import { memoryHost } from '../../src/host/memory.ts';
import type { MemoryHost } from '../../src/host/memory.ts';
import { sample } from '../cases/workspace.ts';

export const TARN = 'models/tarn.yaml';
export const ON = '2026-11-27';

/** The sample in the right hand alone: half as many cards. */
export function rightHanded(): Record<string, string> {
  const files = sample();
  return { ...files, [TARN]: files[TARN]!.replace(/^handed:\n(?: .*\n)+/m, '') };
}

export interface Answer {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

export function desk(files: Readonly<Record<string, string>>, beside: Readonly<Record<string, MemoryHost>> = {}) {
  const host = memoryHost(files);
  const platen = async (...words: readonly string[]): Promise<Answer> => {
    const said = { out: '', err: '' };
    const io = {
      out: (text: string) => void (said.out += text),
      err: (text: string) => void (said.err += text),
      watched: false,
      host: (root: string) => beside[root] ?? host,
    };
    return { code: await run([...words, '--on', ON], io), ...said };
  };
  return { host, platen };
}

/** A text found exactly once, and replaced. */
export function changed(text: string, find: string, replace: string): string {
  const parts = text.split(find);
  if (parts.length !== 2) throw new Error(`found ${parts.length - 1} times: ${find}`);
  return parts.join(replace);
}
