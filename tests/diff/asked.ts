/** What a user asks of `platen diff`: two folders on one machine, and what the command line answers about them. */
import { expect } from 'vitest';
import { run } from '../../src/cli/run.ts';
import { compileAll } from '../../src/compile.ts';
import { memoryHost } from '../../src/host/memory.ts';
import type { WorkspaceFiles } from '../cases/workspace.ts';
import { sample } from '../cases/workspace.ts';

export type Files = Record<string, string>;

/** A third of a table, from its first row on; DIFF_ALL=1 for all of it. */
export const sampled = <T>(all: readonly T[]): readonly T[] =>
  process.env['DIFF_ALL'] === undefined ? all.filter((_, i) => i % 3 === 0) : all;

/** How one number moved; lengths in nanometres. */
export interface Move {
  readonly fact: string;
  readonly by: number;
  readonly ofTolerance?: number;
  readonly limits?: 'apart' | 'overlap' | 'wider' | 'tighter';
}

export interface Change {
  readonly is: string;
  readonly how: 'changed' | 'new' | 'gone';
  readonly text: string;
  readonly also: readonly string[];
  readonly moves: readonly Move[];
  readonly because: readonly string[];
}

export interface Given extends Change {
  readonly id: string;
  readonly tag: 'card' | 'check' | 'record';
}

interface CardDiff {
  readonly model: string;
  readonly hand: string;
  readonly is: string;
  readonly old?: string;
  readonly new?: string;
  readonly changes: readonly Change[];
}

export interface Answer {
  readonly plant: readonly Given[];
  readonly models: readonly {
    readonly id: string;
    readonly is: string;
    readonly given: readonly Given[];
    readonly elsewhere: readonly { readonly id: string }[];
  }[];
  readonly stations: readonly { readonly id: string; readonly cards: readonly CardDiff[] }[];
  readonly untouched: readonly string[];
}

/** What `platen diff ./old . --json` answers; anything but a good end is the test's own mistake, or a fault. */
export async function diffOf(old: WorkspaceFiles, now: WorkspaceFiles): Promise<Answer> {
  const said = { out: '', err: '' };
  const code = await run(['diff', './old', '.', '--json'], {
    out: (text) => void (said.out += text),
    err: (text) => void (said.err += text),
    watched: false,
    host: (root) => memoryHost(/(^|\/)old$/.test(root) ? old : now),
  });
  expect(said.err).toBe('');
  expect(code).toBe(0);
  return JSON.parse(said.out) as Answer;
}

export interface Made {
  /** Content codes by station and hand. */
  readonly codes: Readonly<Record<string, string>>;
  readonly findings: readonly string[];
  /** Those of them that stop a card. */
  readonly errors: readonly string[];
}

/** The cards a workspace gives, by another way than the command that is tested. */
export function made(files: WorkspaceFiles): Made {
  const { checked, models } = compileAll(memoryHost(files));
  const cards = models.flatMap((model) => model.cards);
  const findings = [...checked.findings, ...models.flatMap((model) => model.findings)];
  return {
    codes: Object.fromEntries(cards.map(({ card, code }) => [`${card.key.station} ${card.key.hand}`, code])),
    findings: findings.map(({ id }) => id),
    errors: findings.filter(({ severity }) => severity === 'error').map(({ id }) => id),
  };
}

export const TARN = 'models/tarn.yaml';
export const BASE = 'models/base/bolt-on.yaml';
export const PLANT = 'models/plant/plant.yaml';

/** The sample without its left hand: what is said of one hand takes half the time. */
export function rightHand(): Files {
  const files = sample();
  return { ...files, [TARN]: changed(files[TARN]!, /^handed:\n(?: .*\n)+\n/m, '') };
}

/** A text with one thing in it changed; throws where that is not there. */
export function changed(text: string, find: string | RegExp, replace: string): string {
  const after = text.replace(find, () => replace);
  if (after === text) throw new Error(`not found, or not changed: ${String(find)}`);
  return after;
}
