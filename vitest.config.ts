import { defineConfig } from 'vitest/config';

export default defineConfig({
  resolve: { conditions: ['wrestplank', 'module', 'node'] },
  ssr: { resolve: { conditions: ['wrestplank', 'module', 'node'] } },
  test: {
    include: ['src/**/*.test.{ts,tsx}', 'lint/**/*.test.ts', 'bench/**/*.test.ts', 'scripts/**/*.test.ts'],
    testTimeout: 60_000,
    hookTimeout: 120_000,
    restoreMocks: true,
    globalSetup: ['src/store/testing/emit.ts'],
  },
});
