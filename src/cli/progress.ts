/** Progress for somebody who watches: one line, written over. Nothing is written into a pipe. */
import type { Io } from './io.ts';

export function progress(io: Io, what: string, total: number): { step: () => void; end: () => void } {
  let count = 0;
  return {
    step() {
      count += 1;
      if (io.watched) io.err(`\r${what} ${count} of ${total}`);
    },
    end() {
      if (io.watched) io.err('\r\u001b[K');
    },
  };
}
