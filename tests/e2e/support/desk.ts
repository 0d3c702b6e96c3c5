import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { BrowserContext, BrowserContextOptions, Page } from 'playwright-core';
import { sharedBrowser } from './browser.ts';
import { startHost, type Host } from './host.ts';
import { watchPage } from './watchPage.ts';

const STEP_LIMIT_MS = 30_000;

/** A running host on a fresh folder and a browser to visit it. */
export interface TestDesk {
  readonly folder: string;
  readonly host: Host;
  /** A window of a stranger, that was never opened from an address of ours. */
  newPage(): Promise<Page>;
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
  const browser = await sharedBrowser();
  const contexts: BrowserContext[] = [];
  async function newContext(options: BrowserContextOptions = {}): Promise<BrowserContext> {
    const context = await browser.newContext({
      viewport: { width: 1280, height: 800 },
      ...options,
    });
    contexts.push(context);
    return context;
  }
  return {
    folder,
    host,
    newPage: async () => (await newContext()).newPage(),
    async open(options = {}, firstSteps = false) {
      const context = await newContext(options);
      if (!firstSteps) await context.addInitScript(markStepsSeen);
      const page = await context.newPage();
      page.setDefaultTimeout(STEP_LIMIT_MS);
      const complaints = watchPage(page);
      await page.goto(await host.newAddress());
      await page.getByRole('heading', { level: 1 }).waitFor();
      return { page, complaints };
    },
    async close() {
      for (const context of contexts) await context.close();
      await host.stop();
      await rm(folder, { recursive: true, force: true });
    },
  };
}
