import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { openBrowser } from './browser.ts';
import { startHost, type Host } from './host.ts';
import { watchPage } from './watchPage.ts';

const STEP_LIMIT_MS = 30_000;

/** A running host on a fresh folder and a browser to visit it. */
export interface TestDesk {
  readonly folder: string;
  readonly host: Host;
  readonly browser: Browser;
  /** A window of its own, as if opened from a newly printed address; the first steps are seen. */
  open(options?: BrowserContextOptions, firstSteps?: boolean): Promise<Window>;
  close(): Promise<void>;
}

interface Window {
  readonly page: Page;
  /** What the page complained about so far. */
  readonly complaints: readonly string[];
}

/** Runs in the page: the first steps are a test of their own. */
function markStepsSeen(): void {
  // An empty document has no storage, and says so by an error.
  if (location.protocol === 'http:') localStorage.setItem('trotwell:first-steps', 'seen');
}

export async function openDesk(): Promise<TestDesk> {
  const folder = await mkdtemp(join(tmpdir(), 'trotwell-e2e-'));
  const host = await startHost(folder);
  const browser = await openBrowser();
  return {
    folder,
    host,
    browser,
    async open(options = {}, firstSteps = false) {
      const context = await browser.newContext({
        viewport: { width: 1280, height: 800 },
        ...options,
      });
      if (!firstSteps) await context.addInitScript(markStepsSeen);
      const page = await context.newPage();
      page.setDefaultTimeout(STEP_LIMIT_MS);
      const complaints = watchPage(page);
      await page.goto(await host.newAddress());
      await page.getByRole('heading', { level: 1 }).waitFor();
      return { page, complaints };
    },
    async close() {
      await browser.close();
      await host.stop();
      await rm(folder, { recursive: true, force: true });
    },
  };
}
