import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

/** End to end in a real browser against the built program: one test file at a time, one worker. A test that fails is tried once more, and named if it passes then. */
export default defineConfig({
  resolve: { alias: [{ find: /^#(\w+)$/u, replacement: fileURLToPath(new URL('./src/$1/index.ts', import.meta.url)) }] },
  test: {
    include: ['e2e/**/*.e2e.ts'],
    globalSetup: ['e2e/support/demo-once.ts'],
    maxWorkers: 1,
    fileParallelism: false,
    testTimeout: 120_000,
    hookTimeout: 120_000,
    retry: 1,
  },
});
