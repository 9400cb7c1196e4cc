/**
 * Publishing where the system makes no links: `cards` is a real folder, replaced by two renames. Between them there is
 * no `cards` for an instant; a crash right there is mended at the next start, which puts the old folder back.
 */
import { appendFileSync, existsSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { basename, join } from 'node:path';
import { swappedFile } from './in-force.ts';
import { errorCode } from './paths.ts';
import { isLive, pidOf } from './process-id.ts';
import { flushFolder } from './tree.ts';

const prefix = '.before-';

/** Puts the folder `next` (named `.next-<pid>-<tag>`) in place of `cards`; on failure the old one is put back. */
export function swapFolder(out: string, id: string, next: string): void {
  const before = join(out, '.builds', basename(next).replace('.next-', prefix));
  // Written first and never shortened: it is how a later run knows the folder for its own.
  appendFileSync(swappedFile(out), `${id}\n`);
  // Another publisher may put its folder there between the two renames: then that one is set aside in turn.
  for (let attempt = 1; ; attempt += 1) {
    moveAside(join(out, 'cards'), before);
    try {
      renameSync(next, join(out, 'cards'));
      break;
    } catch (error) {
      if (!existsSync(join(out, 'cards'))) renameIfThere(before, join(out, 'cards'));
      if (attempt === 5 || !['ENOTEMPTY', 'EEXIST', 'EPERM'].includes(errorCode(error))) throw error;
    }
  }
  flushFolder(out);
  rmSync(before, { recursive: true, force: true });
}

function moveAside(cards: string, before: string): void {
  rmSync(before, { recursive: true, force: true });
  renameIfThere(cards, before);
}

function renameIfThere(from: string, to: string): void {
  try {
    renameSync(from, to);
  } catch (error) {
    if (errorCode(error) !== 'ENOENT') throw error;
  }
}

/** Mends what a crash between the two renames left: the old folder goes back where `cards` is missing, else it is removed. */
export function recoverSwap(out: string): void {
  for (const name of readdirSync(join(out, '.builds')).filter((each) => each.startsWith(prefix))) {
    const pid = pidOf(name);
    if (pid !== process.pid && isLive(pid)) continue;
    const before = join(out, '.builds', name);
    if (existsSync(join(out, 'cards'))) rmSync(before, { recursive: true, force: true });
    else renameIfThere(before, join(out, 'cards'));
  }
}
