/** A word to somebody who watches while the program works; nothing is written into a pipe. */
import type { Io } from './io.ts';

export function busy<T>(io: Io, what: string, work: () => T): T {
  if (io.watched) io.err(`${what} …`);
  try {
    return work();
  } finally {
    if (io.watched) io.err('\r\u001b[K');
  }
}
