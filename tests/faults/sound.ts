/** Sound workspaces to plant faults in: the sample, and each demo model with the whole plant and no other model. */
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { sample } from '../cases/workspace.ts';
import type { Files, Tree } from './merged.ts';
import { layersOf, modelOf, plantOf } from './merged.ts';

export interface Sound {
  readonly name: string;
  readonly files: Files;
  /** The model's file, then the file it is based on, and so on: the first that says something wins. */
  readonly layers: readonly string[];
  /** The model after merging, and the plant in one. */
  readonly model: Tree;
  readonly plant: Tree;
}

const root = join(import.meta.dirname, '..', '..');

/** Specs and plant: what stations read has faults of its own, in tests/read. */
export const soundSample = (): Sound =>
  soundOf(
    'sample',
    'models/tarn.yaml',
    Object.fromEntries(Object.entries(sample()).filter(([path]) => /\.(?:yaml|svg)$/.test(path))),
  );

/** The demo models by name; each with `models/plant` and `models/base` whole. */
export function soundDemos(): Sound[] {
  const all = demoFiles();
  const models = Object.keys(all).filter((path) => path.split('/').length === 2);
  const shared = Object.entries(all).filter(([path]) => !models.includes(path));
  return models.map((file) =>
    soundOf(file.slice('models/'.length, -'.yaml'.length), file, {
      ...Object.fromEntries(shared),
      [file]: all[file]!,
    }),
  );
}

function demoFiles(): Record<string, string> {
  const files = readdirSync(join(root, 'models'), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.(?:yaml|svg)$/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name));
  const named = files.map((path) => [path.slice(root.length + 1).replaceAll('\\', '/'), readFileSync(path, 'utf8')]);
  return Object.fromEntries(named.toSorted(([a], [b]) => (a! < b! ? -1 : 1))) as Record<string, string>;
}

function soundOf(name: string, file: string, files: Record<string, string>): Sound {
  const layers = layersOf(files, file);
  return { name, files, layers, model: modelOf(files, layers), plant: plantOf(files) };
}
