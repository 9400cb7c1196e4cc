/** The outside in memory, for tests: the same answers as a workspace, and a record of what was asked. */
import type { Host } from './host.ts';
import { byCodeUnit, insidePath } from './paths.ts';
import type { Printer } from './printer.ts';
import { shipped, shippedList } from './shipped.ts';
import { treeFingerprint, type Tree } from './tree.ts';

export interface MemoryHost extends Host {
  /** Paths asked for by `read`, in order, found or not. */
  readonly reads: readonly string[];
  /** Folders asked for by `list`, in order. */
  readonly lists: readonly string[];
  /** The tree in force by folder, its contents as bytes. */
  readonly published: ReadonlyMap<string, ReadonlyMap<string, Uint8Array>>;
}

export interface MemoryOptions {
  readonly today?: string;
  readonly printer?: Printer;
}

const bytesOf = (content: string | Uint8Array): Uint8Array =>
  typeof content === 'string' ? new TextEncoder().encode(content) : Uint8Array.from(content);

function bytesTree(tree: Tree): ReadonlyMap<string, Uint8Array> {
  return new Map([...tree].map(([path, content]) => [path, bytesOf(content)] as const));
}

/** A host over the given files. Files shipped with the program are the real ones: they are part of it, not of the outside. */
export function memoryHost(
  files: Readonly<Record<string, string | Uint8Array>>,
  options: MemoryOptions = {},
): MemoryHost {
  const store = new Map(bytesTree(new Map(Object.entries(files))));
  const reads: string[] = [];
  const lists: string[] = [];
  const published = new Map<string, ReadonlyMap<string, Uint8Array>>();
  return {
    reads,
    lists,
    published,
    list(dir) {
      lists.push(dir);
      const inside = insidePath(dir);
      if (inside === undefined) return [];
      return [...store.keys()].filter((path) => inside === '' || path.startsWith(`${inside}/`)).toSorted(byCodeUnit);
    },
    read(path) {
      reads.push(path);
      const inside = insidePath(path);
      return inside === undefined ? undefined : store.get(inside)?.slice();
    },
    isBelow(dir, path) {
      const [folder, inside] = [insidePath(dir), insidePath(path)];
      return inside !== undefined && store.has(inside) && (folder === '' || inside.startsWith(`${folder}/`));
    },
    shipped,
    shippedList,
    today: () => options.today ?? '2026-01-05',
    create(path, text) {
      const inside = insidePath(path);
      if (inside === undefined) return { failed: `${path} lies outside the workspace.` };
      if (store.has(inside)) return { failed: `${path} is there already.` };
      store.set(inside, bytesOf(text));
      return { created: true };
    },
    replace(path, text) {
      const inside = insidePath(path);
      if (inside === undefined) return { failed: `${path} lies outside the workspace.` };
      store.set(inside, bytesOf(text));
      return { created: true };
    },
    publish(dir, tree) {
      if (!dir.startsWith('/') && insidePath(dir) === undefined)
        return { failed: `The folder ${dir} lies outside the workspace.` };
      const before = published.get(dir);
      const changed = before === undefined || treeFingerprint(before) !== treeFingerprint(tree);
      published.set(dir, bytesTree(tree));
      return { path: `${dir}/cards`, changed };
    },
    openPrinter: () => Promise.resolve(options.printer ?? { missing: 'No browser for PDF in memory.', tried: [] }),
  };
}
