import { readFileSync } from 'node:fs';
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
  const bytes = [...files].map((path) => gzipSync(readFileSync(join(rendererFolder, path))).length);
  return {
    name: 'Scripts and styles up to the first list, gzip',
    against: `${files.size} files`,
    value: bytes.reduce((sum, size) => sum + size, 0) / 1000,
    unit: 'kB',
    target: 90,
  };
}
