import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Page } from 'playwright-core';
import type { BenchLine } from './measure.ts';

/** Notes what scripts and styles the page asks for from now on. */
export function watchFiles(page: Page): Set<string> {
  const files = new Set<string>();
  page.on('request', (request) => {
    const { pathname } = new URL(request.url());
    if (/\.(m?js|css)$/.test(pathname)) files.add(pathname);
  });
  return files;
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
