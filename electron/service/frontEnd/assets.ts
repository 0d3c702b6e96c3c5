import { readdirSync, realpathSync } from 'node:fs';
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
 * in the list has no file, whatever it spells. Links that lead outside the folder are left out.
 */
export function listAssets(folder: string): ReadonlyMap<string, Asset> {
  const root = realpathSync(folder);
  const assets = new Map<string, Asset>();
  for (const entry of readdirSync(root, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile()) continue;
    const file = realpathSync(join(entry.parentPath, entry.name));
    if (!file.startsWith(root + sep)) continue;
    const mediaType = MEDIA_TYPES[extname(file)];
    if (mediaType === undefined) continue;
    assets.set(`/${relative(root, file).split(sep).join('/')}`, { file, mediaType });
  }
  const index = assets.get('/index.html');
  if (index !== undefined) assets.set('/', index);
  return assets;
}
