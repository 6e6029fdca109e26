import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    include: ['tests/**/*.test.ts'],
    testTimeout: 60_000,
    // Many tests wait for other processes: a machine of two cores is not left half idle.
    maxWorkers: Math.max(2, availableParallelism() - 1),
  },
});
