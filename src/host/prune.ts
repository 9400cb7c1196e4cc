/** Tidies `<out>/.builds`: only the build in force stays, and what live processes are still writing. */
import { randomBytes } from 'node:crypto';
import { lstatSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { buildName, linkedBuild } from './in-force.ts';
import { isLive, pidOf } from './process-id.ts';

/**
 * Removes builds no longer in force and the leavings of dead processes. The three looks come in this order on purpose:
 * a build seen in the first was claimed by a pending link before; if the second no longer finds the claim, `cards` has
 * been switched already and the third sees it. Failing to remove is no failure: the next publishing tries again.
 */
export function prune(out: string): void {
  const builds = join(out, '.builds');
  const found = attempt(() => readdirSync(builds)) ?? [];
  const claims = (attempt(() => readdirSync(builds)) ?? []).filter((name) => name.endsWith('.link') && !isStale(name));
  const kept = new Set(claims.map((name) => buildBehind(join(builds, name))));
  const current = inForceBuild(out);
  const spare =
    current === 'unknown' ? [] : found.filter((name) => buildName.test(name) && name !== current && !kept.has(name));
  for (const name of [...found.filter(isStale), ...spare]) attempt(() => removeWhole(builds, name));
}

/** Publishing is synchronous: whatever bears this process's own number now is a leaving of an earlier process of that number. */
function isStale(name: string): boolean {
  return name.startsWith('.next-') && (pidOf(name) === process.pid || !isLive(pidOf(name)));
}

function buildBehind(link: string): string | undefined {
  return attempt(() => linkedBuild(link));
}

/** The build behind `cards`; undefined where `cards` is a real folder; 'unknown' where it can't be told, and nothing may go. */
function inForceBuild(out: string): string | undefined {
  const stats = attempt(() => lstatSync(join(out, 'cards')));
  if (stats?.isDirectory()) return undefined;
  return (stats?.isSymbolicLink() ? buildBehind(join(out, 'cards')) : undefined) ?? 'unknown';
}

/** A build leaves its name in one step, so that nobody meets half of it. */
function removeWhole(builds: string, name: string): void {
  const doomed = join(builds, `.next-${process.pid}-${randomBytes(4).toString('hex')}`);
  renameSync(join(builds, name), doomed);
  rmSync(doomed, { recursive: true, force: true });
}

function attempt<T>(action: () => T): T | undefined {
  try {
    return action();
  } catch {
    return undefined;
  }
}
