/** A model with what it is based on, and the plant in one, as plain values: our own reading of the README's rules. */
import { parse } from 'yaml';

export type Files = Readonly<Record<string, string>>;

export type Tree = { readonly [key: string]: unknown };

export const isTree = (value: unknown): value is Tree =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** `over` laid on `under`: maps key by key, all else replaced; `remove` drops keys of what lies below. */
export function laid(over: Tree, under: Tree): Tree {
  const { remove, ...own } = over;
  const gone = Array.isArray(remove) ? (remove as string[]) : [];
  const kept = Object.fromEntries(Object.entries(under).filter(([key]) => !gone.includes(key)));
  const both = Object.entries(own).map(([key, value]) => {
    const below = kept[key];
    return [key, isTree(value) ? laid(value, isTree(below) ? below : {}) : value] as const;
  });
  return { ...kept, ...Object.fromEntries(both) };
}

export const treeOf = (text: string | undefined): Tree => {
  const value: unknown = parse(text ?? '');
  return isTree(value) ? value : {};
};

export const modelOf = (files: Files, layers: readonly string[]): Tree =>
  layers.map((file) => treeOf(files[file])).reduceRight((below, over) => laid(over, below), {});

export const plantOf = (files: Files): Tree =>
  plantFiles(files).reduce((all, file) => laid(treeOf(files[file]), all), {});

/** A model's file, then the file it is based on, and so on. */
export function layersOf(files: Files, file: string): string[] {
  const base = treeOf(files[file])['based-on'];
  return typeof base === 'string' ? [file, ...layersOf(files, `models/${base}.yaml`)] : [file];
}

export const plantFiles = (files: Files): string[] =>
  Object.keys(files).filter((path) => path.startsWith('models/plant/'));

/** The value at a path, or undefined. */
export const at = (tree: unknown, path: readonly string[]): unknown =>
  path.reduce<unknown>((value, key) => (isTree(value) ? value[key] : undefined), tree);

export const treeAt = (tree: unknown, path: readonly string[]): Tree => {
  const value = at(tree, path);
  return isTree(value) ? value : {};
};
