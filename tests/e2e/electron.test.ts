import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { _electron, type ElectronApplication, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { CALL_NAMES } from '../../electron/contract/callNames.ts';
import { findRuntime } from '../../electron/launch/runtime.mjs';
import { welcomePage } from './pages/welcomePage.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const program = findRuntime(join(ROOT, 'node_modules', 'electron'));

function whyNot(): string | null {
  if (program === null) return 'no Electron runtime on this machine';
  if (process.platform !== 'linux') return null;
  if (!process.env['DISPLAY'] && !process.env['WAYLAND_DISPLAY']) return 'no display for a window';
  return process.getuid?.() === 0 ? 'Electron keeps its sandbox, so it does not run as root' : null;
}

const reason = whyNot();

// The real runtime. tests/shell checks the same shell against a stand-in, everywhere.
describe.skipIf(reason !== null)(
  `the real Electron window${reason === null ? '' : ` (${reason})`}`,
  () => {
    let folder: string;
    let app: ElectronApplication;
    let page: Page;

    beforeAll(async () => {
      folder = mkdtempSync(join(tmpdir(), 'trotwell-electron-'));
      app = await _electron.launch({
        executablePath: program!,
        args: [ROOT],
        env: { ...(process.env as Record<string, string>), TROTWELL_DATA: folder },
      });
      page = await app.firstWindow();
      await page.getByRole('heading', { level: 1, name: 'Welcome to Trotwell' }).waitFor();
    }, 60_000);

    afterAll(async () => {
      await app?.close();
      rmSync(folder, { recursive: true, force: true });
    });

    test('shows the welcome page on our own scheme', () => {
      expect(page.url()).toMatch(/^trotwell:\/\/app\/index\.html/);
    });

    test('gives the page the bridge and nothing of Node', async () => {
      const seen = await page.evaluate(() => {
        const page = globalThis as unknown as Record<string, unknown>;
        const bridge = page['trotwell'] as { calls: object };
        return {
          node: ['require', 'process', 'module', 'Buffer'].filter((name) => name in page),
          bridge: Object.keys(bridge),
          calls: Object.keys(bridge.calls),
        };
      });
      expect(seen.node).toEqual([]);
      expect(seen.bridge.sort()).toEqual([
        'calls',
        'chooseFile',
        'dropFile',
        'onLeave',
        'saveFile',
        'saveProduced',
      ]);
      expect(seen.calls.sort()).toEqual([...CALL_NAMES].sort());
    });

    test('goes nowhere else and opens nothing', async () => {
      const opened = await page.evaluate(() => window.open('http://elsewhere.example/') === null);
      expect(opened).toBe(true);
      await page.evaluate(() => {
        window.location.href = 'http://elsewhere.example/';
      });
      await page.getByRole('heading', { level: 1, name: 'Welcome to Trotwell' }).waitFor();
      expect(page.url()).toMatch(/^trotwell:\/\/app\//);
      expect(app.windows()).toHaveLength(1);
    });

    test('keeps records through the service process', async () => {
      await welcomePage(page).startEmpty();
    });
  },
);
