import { chromium, type Browser } from 'playwright-core';
import { CHROMIUM_ARGS, findChromium } from '../../support/chromium.ts';

let shared: Promise<Browser> | null = null;

/** The one browser of this worker. It ends with the worker; each test has windows of its own in it. */
export function sharedBrowser(): Promise<Browser> {
  shared ??= openBrowser();
  return shared;
}

/**
 * Opens Chromium without a window, with more switches where a test needs them.
 * @throws when there is none: a missing browser is a failure.
 */
export async function openBrowser(more: readonly string[] = []): Promise<Browser> {
  const executablePath = findChromium();
  if (executablePath === null) {
    throw new Error('No Chromium on this machine. "npm test" fetches one.');
  }
  return chromium.launch({ executablePath, args: [...CHROMIUM_ARGS, ...more] });
}
