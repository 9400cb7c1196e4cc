/** What a command needs of the process: where to write, which workspace, which day. */
import type { Host } from '../host/host.ts';

export interface Io {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  /** Whether somebody watches: progress is shown to people, never written into a pipe. */
  readonly watched: boolean;
  readonly host: (root: string) => Host;
}

/** Options every command has. */
export interface Common {
  readonly root: string;
  readonly on?: string;
}

/** Exit codes, a documented contract. */
export const EXIT = { good: 0, errors: 1, usage: 2, bug: 3 } as const;
