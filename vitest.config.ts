import { defineConfig } from 'vitest/config';

export default defineConfig({
  resolve: { conditions: ['wrestplank', 'module', 'node'] },
  ssr: { resolve: { conditions: ['wrestplank', 'module', 'node'] } },
  test: {
    include: ['src/**/*.test.{ts,tsx}', 'lint/**/*.test.ts', 'bench/**/*.test.ts', 'scripts/**/*.test.ts'],
    // One worker a core: left to itself it keeps one core free, which halves the speed on two.
    maxWorkers: '100%',
    testTimeout: 120_000,
    hookTimeout: 120_000,
    restoreMocks: true,
    globalSetup: ['src/store/testing/emit.ts'],
  },
});
