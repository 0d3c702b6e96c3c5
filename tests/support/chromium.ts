import { accessSync, constants } from 'node:fs';
import { chromium } from 'playwright-core';

const INSTALLED = [
  // The same browser without a window of its own: it takes two thirds of the work.
  '/usr/bin/chromium-headless-shell',
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/snap/bin/chromium',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
];

/** Keeps the browser from calling anywhere; root in a container has no sandbox to offer. */
export const CHROMIUM_ARGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

function runnable(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/** A Chromium with all that it keeps on the disk, where there is one; else the other. */
export const findWholeChromium = (): string | null =>
  INSTALLED.slice(1).find(runnable) ?? findChromium();

/** A Chromium on this machine: `TROTWELL_CHROMIUM`, Playwright's own, or an installed one. */
export function findChromium(): string | null {
  const named = process.env['TROTWELL_CHROMIUM'];
  const candidates = [...(named ? [named] : []), chromium.executablePath(), ...INSTALLED];
  return candidates.find((path) => path !== '' && runnable(path)) ?? null;
}
