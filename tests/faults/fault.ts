/** A fault: one change to the text of a sound workspace, and where it ought to be found. */
import type { Entry } from './entries.ts';
import { dotted } from './entries.ts';
import type { Files } from './merged.ts';
import type { Sound } from './sound.ts';

export interface Splice {
  readonly file: string;
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

export interface Mark {
  readonly file: string;
  /** In the text before the change. */
  readonly offset: number;
}

export interface Fault {
  /** Unique and the same in every run: `sample/removed/timber.cap.stock`. */
  readonly id: string;
  readonly kind: string;
  readonly splices: readonly Splice[];
  /** The line it was made on first; then the others that count as right. */
  readonly marks: readonly Mark[];
  /** Whether a sound program must notice it. Asked only of faults that are planted: it may take some working out. */
  readonly must: () => boolean;
  /** It is more than one mistake at once, so more than one top finding is right. */
  readonly several: boolean;
}

/** Says a fault of an entry: `what` tells it from others of its kind and place. */
export interface Wanted {
  readonly kind: string;
  readonly what?: string;
  readonly splices: readonly Splice[];
  readonly must: boolean | (() => boolean);
  readonly also?: readonly Mark[];
  readonly several?: boolean;
}

export function faultAt(
  sound: Sound,
  entry: Entry,
  { kind, what, splices, must, also = [], several = false }: Wanted,
): Fault {
  const base = entry.file === sound.layers[0] || entry.of === 'plant' ? '' : `${entry.file.slice('models/'.length)}:`;
  const id = [sound.name, kind, `${base}${dotted(entry)}`, ...(what === undefined ? [] : [what])].join('/');
  const marks = [{ file: entry.file, offset: entry.key[0] }, ...also];
  return { id, kind, splices, marks, must: typeof must === 'boolean' ? () => must : must, several };
}

/** The value of an entry written anew. */
export const valued = ({ file, value }: Entry, text: string): Splice[] => [
  { file, from: value[0], to: value[1], text },
];

export function planted(files: Files, splices: readonly Splice[]): Record<string, string> {
  const after: Record<string, string> = { ...files };
  for (const { file, from, to, text } of splices.toSorted((a, b) => b.from - a.from)) {
    const before = after[file] ?? '';
    after[file] = before.slice(0, from) + text + before.slice(to);
  }
  return after;
}

/** `file:line` of a mark in the text after the change. */
export function lineOf({ file, offset }: Mark, splices: readonly Splice[], after: Files): string {
  const shifts = splices
    .filter((one) => one.file === file && one.from <= offset)
    .map((one) => (offset < one.to ? one.from - offset : one.text.length - (one.to - one.from)));
  const moved = shifts.reduce((sum, shift) => sum + shift, offset);
  return `${file}:${(after[file] ?? '').slice(0, moved).split('\n').length}`;
}
