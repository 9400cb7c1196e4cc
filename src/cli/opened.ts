/** The releases of a workspace on the day asked for, or a word to the user. */
import type { Host } from '../host/host.ts';
import { openReleases } from '../releases.ts';
import type { Released } from '../releases.ts';
import type { Common, Io } from './io.ts';

export interface Opened extends Released {
  readonly host: Host;
  readonly on: string;
}

/** Undefined over an altered ledger: nothing is answered from it. */
export function opened(options: Common, io: Io): Opened | undefined {
  const host = io.host(options.root);
  const on = options.on ?? host.today();
  const releases = openReleases(host, on);
  if (!('altered' in releases)) return { ...releases, host, on };
  io.err(`${releases.altered} Do not work by any card before the lead has seen to it.\n`);
  return undefined;
}
