/**
 * The outside, as the program sees it: files below one folder, today's date, publishing, paper. Nothing else in the
 * program touches a file, the clock or a browser; `workspace.ts` is the real one, `memory.ts` its twin for tests.
 */
import type { Printer } from './printer.ts';
import type { Published, Tree } from './publish.ts';

/** Why there is no paper: one line that says how to get a browser, and what became of each one that was tried. */
export interface NoPrinter {
  readonly missing: string;
  readonly tried: readonly string[];
}

export interface Host {
  /** Paths of all files below a folder of the workspace, relative to its root, '/'-separated, in code-unit order; [] when the folder isn't there. */
  list(dir: string): string[];
  /** Bytes of a workspace file, or undefined when it isn't there (or would lie outside the workspace). */
  read(path: string): Uint8Array | undefined;
  /** Whether a workspace file, all its links followed, lies below a folder of the workspace. */
  isBelow(dir: string, path: string): boolean;
  /** Bytes of a file that comes with the program: 'templates/card.hbs', or of a package it needs: 'npm:@scope/name/file'. */
  shipped(path: string): Uint8Array | undefined;
  /** Paths of the program's own files below one of its folders, in code-unit order. */
  shippedList(dir: string): string[];
  /** Today's local date, YYYY-MM-DD: asked only where no date is given. */
  today(): string;
  /** Writes a new file of the workspace, whole or not at all; never over one that is there. */
  create(path: string, text: string | Uint8Array): { readonly created: true } | { readonly failed: string };
  /** Puts a file in place of the one that is there, whole or not at all. */
  replace(path: string, text: string | Uint8Array): { readonly created: true } | { readonly failed: string };
  /** Puts a whole tree in place of the one published before, all or nothing at any instant. `dir`: below the root, or absolute where the user named a folder. */
  publish(dir: string, tree: Tree): Published;
  /** Starts a browser for paper. The caller closes it. */
  openPrinter(): Promise<Printer | NoPrinter>;
}
