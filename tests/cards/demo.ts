/** The demo catalogue as the program ships it, compiled in memory. */
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { compileAll } from '../../src/compile.ts';
import type { Compiled } from '../../src/compile.ts';
import { memoryHost } from '../../src/host/memory.ts';

export const root = join(import.meta.dirname, '..', '..');

export function demoFiles(): Record<string, Uint8Array> {
  const names = readdirSync(join(root, 'models'), { recursive: true, encoding: 'utf8' });
  const files = names.filter((name) => /\.(?:yaml|svg)$/.test(name)).map((name) => `models/${name}`);
  return Object.fromEntries(files.map((path) => [path, readFileSync(join(root, path))]));
}

export const compileDemo = (): Compiled => compileAll(memoryHost(demoFiles()));
