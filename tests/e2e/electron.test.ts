import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { _electron } from 'playwright-core';
import { describe, expect, test } from 'vitest';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const FOLDER = join(ROOT, 'node_modules', 'electron');

/** The Electron program, where one was fetched; its package writes the name into path.txt. */
function electronProgram(): string | null {
  const named = join(FOLDER, 'path.txt');
  if (!existsSync(named)) return null;
  const program = join(FOLDER, 'dist', readFileSync(named, 'utf8'));
  return existsSync(program) ? program : null;
}

const program = electronProgram();
const hasDisplay = process.platform !== 'linux' || Boolean(process.env['DISPLAY']);
const reason =
  program === null
    ? 'no Electron runtime on this machine'
    : hasDisplay
      ? null
      : 'no display for a window';

describe('the real Electron window', () => {
  test.skipIf(reason !== null)(
    `opens and shows the welcome page${reason === null ? '' : ` (skipped: ${reason})`}`,
    async () => {
      const folder = mkdtempSync(join(tmpdir(), 'trotwell-electron-'));
      const app = await _electron.launch({
        executablePath: program!,
        args: [ROOT],
        env: { ...(process.env as Record<string, string>), TROTWELL_DATA: folder },
      });
      try {
        const window = await app.firstWindow();
        await window.getByRole('heading', { level: 1 }).waitFor();
        expect(await window.title()).toContain('Trotwell');
        expect(
          await window.evaluate(() => typeof (globalThis as { require?: unknown }).require),
        ).toBe('undefined');
      } finally {
        await app.close();
        rmSync(folder, { recursive: true, force: true });
      }
    },
  );
});
