import { join } from 'node:path';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: join(import.meta.dirname, '..'),
  test: {
    include: ['tests/**/*.test.ts'],
    reporters: ['default', join(import.meta.dirname, 'summary.ts')],
    testTimeout: 60_000,
    // Every core works: a run on two of them would leave one idle.
    maxWorkers: '100%',
  },
});
