import { fileURLToPath } from 'node:url';
import vue from '@vitejs/plugin-vue';
import { defineConfig } from 'electron-vite';
import { normalizePath } from 'vite';

const at = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

/** As the bundler names it. */
const moduleAt = (path: string): string => normalizePath(at(path));

const MAIN = moduleAt('./renderer/main.ts');
const CORE = moduleAt('./core/');
/** Not followed: what of core and of the libraries a page needs is put with it by the bundler. */
const FOLLOWED = /\/renderer\/|\/node_modules\/(@vue|vue|vue-router|pinia)\//;

interface Modules {
  getModuleInfo(id: string): { readonly importedIds: readonly string[] } | null;
}

/**
 * One file for all that some pages need before they show anything: each of many small ones would be
 * a request of its own. The start itself waits at its top level and stays apart.
 */
function oneFile(name: string, priority: number, pages: readonly string[]) {
  const needed = new Set<string>();
  const follow = (id: string, modules: Modules): void => {
    if (needed.has(id) || !FOLLOWED.test(id)) return;
    needed.add(id);
    modules.getModuleInfo(id)?.importedIds.forEach((next) => follow(next, modules));
  };
  return {
    debugName: name,
    priority,
    name(id: string, modules: Modules): string | null {
      if (needed.size === 0) pages.forEach((page) => follow(page, modules));
      return id !== MAIN && needed.has(id) ? name : null;
    },
  };
}

export default defineConfig({
  main: {
    build: {
      outDir: 'out/main',
      // What every start needs goes inside: some five hundred files fewer to read.
      externalizeDeps: { exclude: ['kysely', 'zod'] },
      rollupOptions: {
        input: {
          main: at('./electron/shell/main.ts'),
          service: at('./electron/shell/serviceProcess.ts'),
          loopback: at('./electron/loopback/serve.ts'),
          printThread: at('./electron/service/handouts/printThread.ts'),
        },
        output: {
          // Beside the entries: the service, shared by two of them, looks there for its thread.
          chunkFileNames: '[name]-[hash].js',
          // A third less to read at each start; names stay, for what is logged of an error.
          minify: { compress: false, mangle: false, codegen: { removeWhitespace: true } },
        },
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
      rollupOptions: {
        input: at('./renderer/index.html'),
        output: {
          codeSplitting: {
            groups: [
              oneFile('first', 3, [MAIN, moduleAt('./renderer/pages/DeskPage.vue')]),
              { name: 'core', priority: 2, test: (id: string) => id.startsWith(CORE) },
              oneFile(
                'dog',
                1,
                ['DogPage', 'PlanPage', 'HandoutsPage'].map((name) =>
                  moduleAt(`./renderer/pages/${name}.vue`),
                ),
              ),
            ],
          },
        },
      },
    },
  },
});
