import { readdirSync } from 'node:fs';
import { extname, join, relative, sep } from 'node:path';

const MEDIA_TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.woff2': 'font/woff2',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
};

export interface Asset {
  readonly file: string;
  readonly mediaType: string;
}

/**
 * The files of the built front end, by address path. Listed once at start: an address that is not
 * in the list has no file, whatever it spells. Links are left out: they may lead outside the folder.
 */
export function listAssets(folder: string): ReadonlyMap<string, Asset> {
  const assets = new Map<string, Asset>();
  for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile()) continue;
    const file = join(entry.parentPath, entry.name);
    const mediaType = MEDIA_TYPES[extname(file)];
    if (mediaType === undefined) continue;
    assets.set(`/${relative(folder, file).split(sep).join('/')}`, { file, mediaType });
  }
  const index = assets.get('/index.html');
  if (index !== undefined) assets.set('/', index);
  return assets;
}
