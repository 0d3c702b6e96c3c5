import { readFile } from 'node:fs/promises';
import { protocol } from 'electron';
import { listAssets } from '../service/frontEnd/assets.ts';
import { STRICT_HEADERS } from '../service/frontEnd/headers.ts';
import { APP_ORIGIN, APP_SCHEME } from './channels.ts';

/** Must run before the app is ready. */
export function declareScheme(): void {
  protocol.registerSchemesAsPrivileged([
    { scheme: APP_SCHEME, privileges: { standard: true, secure: true, supportFetchAPI: true } },
  ]);
}

/** Serves the built front end, and nothing else, under our own scheme with the strict headers. */
export function serveFrontEnd(folder: string): void {
  const assets = listAssets(folder);
  protocol.handle(APP_SCHEME, async (request) => {
    const url = new URL(request.url);
    const asset =
      `${url.protocol}//${url.host}` === APP_ORIGIN ? assets.get(url.pathname) : undefined;
    if (asset === undefined) return new Response(null, { status: 404, headers: STRICT_HEADERS });
    return new Response(new Uint8Array(await readFile(asset.file)), {
      headers: { ...STRICT_HEADERS, 'content-type': asset.mediaType },
    });
  });
}
