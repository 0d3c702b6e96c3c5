import { fileURLToPath } from 'node:url';
import vue from '@vitejs/plugin-vue';
import { defineConfig } from 'electron-vite';

const at = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

export default defineConfig({
  main: {
    build: {
      outDir: 'out/main',
      // What every start needs goes inside: some five hundred files fewer to read.
      externalizeDeps: { exclude: ['@hono/node-server', 'hono', 'kysely', 'zod'] },
      rollupOptions: {
        input: {
          main: at('./electron/shell/main.ts'),
          service: at('./electron/shell/serviceProcess.ts'),
          loopback: at('./electron/loopback/serve.ts'),
          printThread: at('./electron/service/handouts/printThread.ts'),
        },
        // Beside the entries: the service, shared by two of them, looks there for its thread.
        output: { chunkFileNames: '[name]-[hash].js' },
      },
    },
  },
  preload: {
    build: {
      outDir: 'out/preload',
      // A sandboxed preload must be one CommonJS file with everything inside.
      externalizeDeps: false,
      rollupOptions: {
        input: { preload: at('./electron/shell/preload.ts') },
        output: { format: 'cjs', entryFileNames: '[name].cjs' },
      },
    },
  },
  renderer: {
    root: at('./renderer'),
    base: './',
    // No component is written with options, and their reader is a tenth of Vue.
    plugins: [vue({ features: { optionsAPI: false } })],
    build: {
      outDir: at('./out/renderer'),
      emptyOutDir: true,
      minify: true,
      target: 'es2024',
      // The policy allows no data: scripts and styles; small files stay files.
      assetsInlineLimit: 0,
      rollupOptions: { input: at('./renderer/index.html') },
    },
  },
});
