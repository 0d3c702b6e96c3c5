import vue from '@vitejs/plugin-vue';
import { defineConfig } from 'vitest/config';
import { SOURCE_RUN_FLAGS } from './tests/support/runtimeFlags.ts';

export default defineConfig({
  test: {
    execArgv: [...SOURCE_RUN_FLAGS],
    projects: [
      {
        test: {
          name: 'unit',
          environment: 'node',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/renderer/**', 'tests/e2e/**'],
          testTimeout: 60_000,
        },
      },
      {
        plugins: [vue()],
        test: {
          name: 'renderer',
          environment: 'happy-dom',
          include: ['tests/renderer/**/*.test.ts'],
        },
      },
      {
        test: {
          name: 'e2e',
          environment: 'node',
          include: ['tests/e2e/**/*.test.ts'],
          fileParallelism: false,
          testTimeout: 180_000,
          hookTimeout: 60_000,
        },
      },
    ],
  },
});
