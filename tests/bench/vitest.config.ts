/** Measurements, not tests: nothing here runs with the suite. One worker, so that nothing runs beside what is timed. */
import { join } from 'node:path';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: join(import.meta.dirname, '..', '..'),
  test: {
    include: ['tests/bench/**/*.bench.ts'],
    maxWorkers: 1,
    testTimeout: 600_000,
  },
});
