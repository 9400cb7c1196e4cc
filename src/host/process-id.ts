/** Process numbers in names such as `.next-<pid>-<tag>`. */
import { errorCode } from './paths.ts';

/** The number in a name, or 0 where there is none. */
export function pidOf(name: string): number {
  return Number(/^\.[a-z]+-(\d{1,10})-/.exec(name)?.[1] ?? 0);
}

/** Whether a process of that number runs on this machine. */
export function isLive(pid: number): boolean {
  if (pid <= 0) return false;
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    // Somebody else's process runs all the same.
    return errorCode(error) === 'EPERM';
  }
}
