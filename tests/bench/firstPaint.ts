import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Page } from 'playwright-core';
import type { BenchLine } from './measure.ts';

/** Runs in the page: notes when the first list of dogs stands on it. */
export function noteFirstList(): void {
  const noted = window as unknown as { listedAt?: number };
  new MutationObserver((_, observer) => {
    const captions = [...document.querySelectorAll('main caption')];
    if (!captions.some(({ textContent }) => /dogs$/.test(textContent!.trim()))) return;
    noted.listedAt = performance.now();
    observer.disconnect();
  }).observe(document, { childList: true, characterData: true, subtree: true });
}

/** The scripts and styles that were asked for before the first list stood; what is fetched ahead follows. */
export async function filesUpToList(page: Page): Promise<ReadonlySet<string>> {
  const names = await page.evaluate(() => {
    const { listedAt } = window as unknown as { listedAt: number };
    return performance
      .getEntriesByType('resource')
      .filter(({ startTime }) => startTime <= listedAt)
      .map(({ name }) => new URL(name).pathname);
  });
  return new Set(names.filter((name) => /\.(m?js|css)$/.test(name)));
}

/** The size of what was fetched until the first list of dogs stood on the page. */
export function firstPaintSize(files: ReadonlySet<string>, rendererFolder: string): BenchLine {
  return {
    name: 'Scripts and styles up to the first list, gzip',
    against: `${files.size} files`,
    value: zippedKb([...files], rendererFolder),
    unit: 'kB',
    target: 90,
  };
}

/** What draws the charts: a chunk of its own, fetched with the first chart. */
export function chartsSize(files: ReadonlySet<string>, rendererFolder: string): BenchLine {
  const drawing = readdirSync(join(rendererFolder, 'assets'))
    .filter((name) => /^draw-.*\.js$/.test(name))
    .map((name) => `/assets/${name}`);
  if (drawing.length === 0) throw new Error('No chunk of its own draws the charts.');
  const early = drawing.some((path) => files.has(path));
  return {
    name: 'Script that draws the charts, gzip',
    against: early ? 'fetched with the first list' : 'fetched with the first chart',
    value: zippedKb(drawing, rendererFolder),
    unit: 'kB',
  };
}

const zippedKb = (paths: readonly string[], rendererFolder: string): number =>
  paths.reduce(
    (sum, path) => sum + gzipSync(readFileSync(join(rendererFolder, path))).length / 1000,
    0,
  );
