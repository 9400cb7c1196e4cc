import { join } from 'node:path';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: join(import.meta.dirname, '..'),
  test: {
    include: ['tests/**/*.test.ts'],
    reporters: ['default', join(import.meta.dirname, 'summary.ts')],
    // A machine that is busy with other things is no fault of the code.
    testTimeout: 300_000,
    hookTimeout: 120_000,
    execArgv: ['--max-semi-space-size=64'],
    // Every core works: a run on two of them would leave one idle.
    maxWorkers: '100%',
  },
});
