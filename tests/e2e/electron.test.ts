import { once } from 'node:events';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { ElectronApplication, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { CALL_NAMES } from '../../electron/contract/callNames.ts';
import { deskPage } from './pages/deskPage.ts';
import { handoutsPage } from './pages/handoutsPage.ts';
import { welcomePage } from './pages/welcomePage.ts';
import { startPracticeWith } from './support/ownPractice.ts';
import {
  addressesIn,
  backupsIn,
  launched,
  launchedPackage,
  packaged,
  program,
  startedAgain,
  whyNoWindow,
} from './support/realWindow.ts';

const welcome = (page: Page) =>
  page.getByRole('heading', { level: 1, name: 'Welcome to Trotwell' }).waitFor();
const heading = (page: Page, name: string) =>
  page.getByRole('heading', { level: 1, name }).waitFor();
const because = (reason: string | null): string => (reason === null ? '' : ` (${reason})`);

// The real runtime. tests/shell checks the same shell on a model of it, everywhere.
const reason = whyNoWindow(program);
describe.skipIf(reason !== null)(`the real Electron window${because(reason)}`, () => {
  let folder: string;
  let records: string;
  let netLog: string;
  let app: ElectronApplication;
  let page: Page;

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'trotwell-electron-'));
    [records, netLog] = [join(folder, 'records'), join(folder, 'net.json')];
    ({ app, page } = await launched(records, netLog));
    await welcome(page);
  }, 60_000);

  afterAll(async () => {
    await app?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  /** The system's dialogue is the one thing nobody is there to answer. */
  const saveTo = (path: string): Promise<void> =>
    app.evaluate(({ dialog }, filePath) => {
      dialog.showSaveDialog = () => Promise.resolve({ canceled: false, filePath });
    }, path);

  test('is visible, and shows the welcome page on our own scheme', async () => {
    expect(page.url()).toMatch(/^trotwell:\/\/app\/index\.html/);
    const visible = await app.evaluate(({ BrowserWindow }) =>
      BrowserWindow.getAllWindows().map((window) => window.isVisible()),
    );
    expect(visible).toEqual([true]);
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
      'chooseFiles',
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
    await welcome(page);
    expect(page.url()).toMatch(/^trotwell:\/\/app\//);
    expect(app.windows()).toHaveLength(1);
  });

  test('prints the plan and the feeding sheet, and saves them where the dialogue says', async () => {
    await welcomePage(page).openDemonstration();
    await deskPage(page).open('Bramble');
    await page.evaluate(() => (location.hash += '/handouts'));
    await heading(page, 'Handouts for Bramble');
    for (const sheet of ['Running plan', 'Feeding sheet'] as const) {
      await handoutsPage(page).choose(sheet);
      expect(await handoutsPage(page).previewText()).toContain('Bramble');
      const file = join(folder, `${sheet}.pdf`);
      await saveTo(file);
      await page.getByRole('button', { name: 'Save PDF' }).click();
      await expect.poll(() => existsSync(file), { timeout: 20_000 }).toBe(true);
      expect(readFileSync(file).toString('latin1', 0, 5)).toBe('%PDF-');
    }
  }, 60_000);

  test('a second start gives way to it and ends', async () => {
    expect(await startedAgain(records)).toBe(0);
    expect(app.windows()).toHaveLength(1);
  }, 30_000);

  test('keeps an own practice; quitting leaves a backup, and a later start goes on with it', async () => {
    await app.close();
    ({ app, page } = await launched(records, join(folder, 'net2.json')));
    await welcome(page);
    await startPracticeWith(page, 'Ash');
    expect(backupsIn(records)).toEqual([]);
    await app.close();
    expect(backupsIn(records)).toHaveLength(1);
    ({ app, page } = await launched(records, join(folder, 'net3.json')));
    await heading(page, 'Desk');
    await deskPage(page).open('Ash');
    await app.close();
  }, 120_000);

  test('went to no address but those of our own scheme', () => {
    for (const log of ['net.json', 'net2.json', 'net3.json']) {
      // What the page was told to go to above is stopped before a request is made.
      expect(addressesIn(join(folder, log)), log).toEqual([]);
    }
  });
});

const noPackage =
  packaged === null ? 'TROTWELL_PACKAGED names no installed program' : whyNoWindow(packaged);
describe.skipIf(noPackage !== null)(`the installed package${because(noPackage)}`, () => {
  test('shows its page on our own scheme, keeps records, and leaves a backup', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'trotwell-package-'));
    try {
      const { child, browser, page } = await launchedPackage(folder);
      await welcome(page);
      expect(page.url()).toMatch(/^trotwell:\/\/app\/index\.html/);
      await startPracticeWith(page, 'Ash');
      await browser.close();
      const ended = once(child, 'exit');
      // On Windows a signal kills; the start command asks there (electron/launch/window.mjs).
      if (process.platform === 'win32') return void child.kill();
      child.kill('SIGINT');
      await ended;
      expect(child.exitCode).toBe(0);
      expect(backupsIn(folder)).toHaveLength(1);
    } finally {
      rmSync(folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 500 });
    }
  }, 120_000);
});
