import { join } from 'node:path';
import { defineConfig } from 'vitest/config';
import { instrument } from './instrument.ts';

export default defineConfig({
  root: join(import.meta.dirname, '..', '..'),
  plugins: [instrument()],
  test: {
    include: ['tests/mutation/*.mutation.ts'],
    setupFiles: [join(import.meta.dirname, 'switch.ts')],
    reporters: [join(import.meta.dirname, '..', 'summary.ts')],
    execArgv: ['--max-semi-space-size=64'],
    // The table of what was not noticed goes straight out.
    disableConsoleIntercept: true,
    testTimeout: 60_000,
  },
});
