import vue from '@vitejs/plugin-vue';
import { defineConfig } from 'vitest/config';
import { drawFreshSeed } from './tests/support/freshSeed.ts';
import { GreedyFirst } from './tests/support/greedyFirst.ts';
import { SOURCE_RUN_FLAGS } from './tests/support/runtimeFlags.ts';

drawFreshSeed();

const PURE = ['tests/core/**/*.test.ts', 'tests/outside/**/*.test.ts'];
const RECORDS = ['migrations', 'service', 'stories', 'templates'].map(
  (room) => `tests/${room}/**/*.test.ts`,
);

export default defineConfig({
  test: {
    execArgv: [...SOURCE_RUN_FLAGS],
    // The workers mostly wait for browsers, PDF readers and disks: one a core keeps both cores busy.
    maxWorkers: 2,
    sequence: { sequencer: GreedyFirst },
    projects: [
      {
        test: {
          name: 'pure',
          environment: 'node',
          // Pure functions leave nothing behind, so their files share a worker and what it has loaded.
          isolate: false,
          include: PURE,
          testTimeout: 60_000,
        },
      },
      {
        test: {
          name: 'records',
          environment: 'node',
          // Each test has a folder of its own, so files share a worker and what it has loaded.
          isolate: false,
          include: RECORDS,
          testTimeout: 60_000,
        },
      },
      {
        test: {
          name: 'unit',
          environment: 'node',
          isolate: false,
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/renderer/**', 'tests/e2e/**', ...PURE, ...RECORDS],
          testTimeout: 60_000,
        },
      },
      {
        plugins: [vue()],
        test: {
          name: 'renderer',
          environment: 'happy-dom',
          // A page leaves nothing behind that another reads, so files share a worker and its modules.
          isolate: false,
          include: ['tests/renderer/**/*.test.ts'],
          setupFiles: ['tests/renderer/support/unmount.ts'],
          testTimeout: 60_000,
        },
      },
      {
        test: {
          name: 'e2e',
          environment: 'node',
          // Each has records and a host of its own, so files share a worker and its browser.
          isolate: false,
          include: ['tests/e2e/**/*.test.ts'],
          testTimeout: 180_000,
          expect: { poll: { timeout: 30_000 } },
          hookTimeout: 60_000,
        },
      },
    ],
  },
});
